/** A time that clocks showed twice, and what is left of it. */

import { repeatedHours } from '../../standards/time-zone.ts';
import { HOUR, MINUTE } from '../../standards/time-units.ts';

export interface Fold {
  /** The first pass is from `from` to `change`, the second from there to `to`; milliseconds since 1970. */
  readonly from: number;
  readonly change: number;
  readonly to: number;
  /** The second pass has taken the names of the first. */
  readonly overwritten: boolean;
  /** Files that are of one or the other, if nobody can tell. */
  files: number;
  /** Milliseconds of which there is no file. */
  lost: number;
}

/** Longer than clocks have gone back since 1970 by rule (zoneinfo): not the days that were repeated by decree. */
const LONGEST = 3 * HOUR;

/** The one that the instant lies in. */
export function foldOf(zone: string, instant: number): Fold | undefined {
  for (const { instant: change, before, after } of repeatedHours(zone, instant - LONGEST, instant + LONGEST)) {
    const length = (before - after) * MINUTE;
    const fold = { from: change - length, change, to: change + length, overwritten: false, files: 0, lost: 0 };
    if (instant >= fold.from && instant < fold.to) return fold;
  }
  return undefined;
}
