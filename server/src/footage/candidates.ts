/** Chooses files by their names alone, and decides between two instants that a name can mean. */

import type { Asked } from './segment.ts';

/** A file by name, with the instants that the name can mean. */
export interface CandidateFile {
  readonly path: string;
  readonly instants: readonly number[];
}

/**
 * The files that may overlap the requested time, in order: those that begin before its end and less than `reach` before
 * its start, and always the last one that begins before it.
 *
 * @param reach milliseconds, the longest that a file may be
 */
export function candidatesOf(found: readonly CandidateFile[], { from, to }: Asked, reach: number): CandidateFile[] {
  const last = found.reduce(
    (latest, { instants }) => Math.max(latest, ...instants.filter((instant) => instant <= from)),
    -Infinity,
  );
  const since = Math.min(from - reach, last);
  return found
    .filter(({ instants }) => instants.some((instant) => instant >= since && instant < to))
    .sort((a, b) => (a.instants[0] ?? 0) - (b.instants[0] ?? 0) || (a.path < b.path ? -1 : 1));
}

/** The starts of the last file before and the first after the requested time, where no file is in between. */
export function nearestCandidate(
  found: readonly CandidateFile[],
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

/** One of the two passes of a repeated hour. */
export type Pass = 'first' | 'second';

/** A file is last written to within so many milliseconds of its end. */
const WRITTEN_WITHIN = 600_000;

/**
 * The instant that a name means, where the clocks went back and it fits two: the given `pass`, or else the one that
 * fits the time at which the file was last written to. `undefined` where neither fits, as after copying.
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
