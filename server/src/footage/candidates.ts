/** Which files are worth looking into, by their names alone; and which of two instants a name means. */

import type { Asked } from './segment.ts';

/** A file by name, with the instants that the name can mean. */
export interface Found {
  readonly path: string;
  readonly instants: readonly number[];
}

/**
 * Those that can hold something of what is asked for, in order: they begin before its end, and not longer before it
 * than files are long; and the last one that begins before it in any case.
 *
 * @param reach milliseconds
 */
export function candidatesOf(found: readonly Found[], { from, to }: Asked, reach: number): Found[] {
  const last = found.reduce(
    (latest, { instants }) => Math.max(latest, ...instants.filter((instant) => instant <= from)),
    -Infinity,
  );
  const since = Math.min(from - reach, last);
  return found
    .filter(({ instants }) => instants.some((instant) => instant >= since && instant < to))
    .sort((a, b) => (a.instants[0] ?? 0) - (b.instants[0] ?? 0) || (a.path < b.path ? -1 : 1));
}

/** When the last file before and the first after what is asked for begin; where there is nothing in between. */
export function nearest(
  found: readonly Found[],
  { from, to }: Asked,
): { before: number | undefined; after: number | undefined } {
  let [before, after] = [-Infinity, Infinity];
  for (const { instants } of found) {
    for (const instant of instants) {
      if (instant < from) before = Math.max(before, instant);
      if (instant >= to) after = Math.min(after, instant);
    }
  }
  return { before: before === -Infinity ? undefined : before, after: after === Infinity ? undefined : after };
}

/** Which of the two passes of a repeated hour. */
export type Pass = 'first' | 'second';

/** A file is finished and then not written to any more: within that of its end, in milliseconds, it was written. */
const WRITTEN_WITHIN = 600_000;

/**
 * The instant that a name means which fits two, where the clocks went back: as it is told, or as the time says at which
 * the file was last written to. `undefined` where that says nothing, as after copying.
 *
 * @param length of the file, in milliseconds
 * @param modified milliseconds since 1970
 */
export function passOf(
  instants: readonly number[],
  length: number,
  modified: number,
  pass: Pass | undefined,
): number | undefined {
  const [first, second] = instants;
  if (first === undefined || second === undefined) return first;
  if (pass !== undefined) return pass === 'first' ? first : second;
  const fitting = instants.filter((instant) => Math.abs(modified - (instant + length)) <= WRITTEN_WITHIN);
  return fitting.length === 1 ? fitting[0] : undefined;
}
