/** Times for people: ISO 8601, in the zone of the site. */

import { parseTime } from '../standards/rfc3339.ts';
import { LocalTimes, zonedTime } from '../standards/time-zone.ts';

/** Shows an instant on the site's clock, with its offset: `2026-10-25T01:30:00.000+01:00`. */
export type Shown = (instant: number) => string;

/** @param zone of the site; UTC where it declares none */
export function clockOf(zone: string | undefined): Shown {
  return (instant) =>
    zonedTime(zone ?? 'UTC', Math.round(instant)).toString({ timeZoneName: 'never', fractionalSecondDigits: 3 });
}

/**
 * The instant that the text means, in milliseconds since 1970; or why it means none, as a sentence.
 *
 * @param zone of the site, for times without an offset
 */
export function readTime(text: string, zone: string | undefined): number | { readonly refused: string } {
  const written = parseTime(text);
  if (written === undefined)
    return {
      refused: `${text} is no time of ISO 8601: write it like 2026-10-25T01:30:00 or 2026-10-25T01:30:00+01:00.`,
    };
  const { local, offset } = written;
  if (local === undefined) return { refused: `${text} does not exist: no calendar has the day, or no clock the time.` };
  if (Number.isNaN(offset)) return { refused: `${text} has no offset that a clock can have.` };
  if (offset !== undefined) return local - offset;
  if (zone === undefined)
    return { refused: `The site does not say in which time zone ${text} is: add its offset from UTC, such as +01:00.` };
  const times = new LocalTimes(zone);
  const [first, again] = times.instants(local);
  if (first === undefined)
    return {
      refused: `Clocks in ${zone} skipped ${text}: they went straight to ${clockOf(zone)(times.firstAtOrAfter(local))}.`,
    };
  if (again === undefined) return first;
  const [one, other] = [first, again].map(clockOf(zone));
  return { refused: `Clocks in ${zone} showed ${text} twice. Say which is meant: ${one ?? ''} or ${other ?? ''}.` };
}
