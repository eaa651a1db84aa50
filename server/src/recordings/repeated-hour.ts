/** The hour that the clocks of a time zone show twice when they go back. */

import { lastResult } from '../memo.ts';
import { DAY, MINUTE } from '../standards/time-units.ts';
import { isTimeZone, repeatedHours } from '../standards/time-zone.ts';

/** 400 days, so one change back at least. They are fixed, so that the result is the same every day. */
const FROM = Date.UTC(2026, 0, 1);
const TO = FROM + 400 * DAY;

/**
 * `from 01:00 to 02:00, as on 2026-10-25,`; `undefined` where the clocks never go back, or there is no such zone.
 */
export const repeatedHourOf = lastResult((zone: string): string | undefined => {
  const [change] = isTimeZone(zone) ? repeatedHours(zone, FROM, TO) : [];
  if (change === undefined) return undefined;
  const local = (offset: number): string => new Date(change.instant + offset * MINUTE).toISOString();
  const [from, to] = [local(change.after), local(change.before)];
  return `from ${from.slice(11, 16)} to ${to.slice(11, 16)}, as on ${from.slice(0, 10)},`;
});
