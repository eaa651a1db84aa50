/** A time that clocks showed twice, and how much of it was recorded. */

import { repeatedHours } from '../../standards/time-zone.ts';
import { HOUR, MINUTE } from '../../standards/time-units.ts';

export interface RepeatedHour {
  /** The first pass is from `from` to `change`, the second from there to `to`; milliseconds since 1970. */
  readonly from: number;
  readonly change: number;
  readonly to: number;
  /** The second pass has taken the names of the first. */
  readonly overwritten: boolean;
  /** Number of files that could be of either pass. */
  files: number;
  /** Milliseconds without a file. */
  lost: number;
}

/** Longer than any regular change of clocks since 1970 (zoneinfo); days repeated by decree do not count. */
const LONGEST = 3 * HOUR;

/** The repeated time that the instant is in. */
export function foldOf(zone: string, instant: number): RepeatedHour | undefined {
  for (const { instant: change, before, after } of repeatedHours(zone, instant - LONGEST, instant + LONGEST)) {
    const length = (before - after) * MINUTE;
    const fold = { from: change - length, change, to: change + length, overwritten: false, files: 0, lost: 0 };
    if (instant >= fold.from && instant < fold.to) return fold;
  }
  return undefined;
}
