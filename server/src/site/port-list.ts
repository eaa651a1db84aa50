/** Port names in few characters: `1-16, uplink`. */

import { few } from '../text/words.ts';

/** As many as a line takes. */
const SHOWN = 8;

export function compactPorts(names: readonly string[]): string {
  const runs: string[] = [];
  let first: number | undefined;
  let last = NaN;
  const close = (): void => {
    if (first !== undefined) runs.push(first === last ? String(first) : `${first}-${last}`);
    first = undefined;
  };
  for (const name of names) {
    const number = /^(?:0|[1-9]\d*)$/.test(name) ? Number(name) : NaN;
    if (first !== undefined && number === last + 1) {
      last = number;
      continue;
    }
    close();
    if (Number.isNaN(number)) runs.push(name);
    else first = last = number;
  }
  close();
  return few(runs, SHOWN);
}
