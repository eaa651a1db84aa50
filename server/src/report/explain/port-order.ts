import type { Port } from '../../site/model.ts';

/** Numbered ports by number, then the others as declared. */
export function inPortOrder<T>(all: readonly T[], portOf: (each: T) => Port): T[] {
  const number = (each: T): number | undefined =>
    /^\d+$/.test(portOf(each).name) ? Number(portOf(each).name) : undefined;
  const numbered = all.filter((each) => number(each) !== undefined);
  return [
    ...numbered.sort((a, b) => (number(a) ?? 0) - (number(b) ?? 0)),
    ...all.filter((each) => number(each) === undefined),
  ];
}
