/** Times as a person writes and reads them: ISO 8601, in the zone of the site. */

import { LocalTimes, localTime } from '../standards/local-time.ts';

/** What an instant looks like on the site's clock, with its offset: `2026-10-25T01:30:00.000+01:00`. */
export type Shown = (instant: number) => string;

/** @param zone of the site; UTC where it declares none */
export function clockOf(zone: string | undefined): Shown {
  const times = new LocalTimes(zone ?? 'UTC');
  return (instant) => {
    const rounded = Math.round(instant);
    const offset = times.offsetAt(rounded);
    return new Date(rounded + offset).toISOString().replace('Z', offsetText(offset));
  };
}

const timeForm =
  /^(\d{4})-(\d\d)-(\d\d)[T ](\d\d):(\d\d)(?::(\d\d)(?:[.,](\d{1,9}))?)?(?:(Z)|([+-])(\d\d)(?::?(\d\d))?)?$/i;

/**
 * The instant that the text means, in milliseconds since 1970; or why it means none, as a sentence.
 *
 * @param zone of the site, for times without an offset
 */
export function readTime(text: string, zone: string | undefined): number | { readonly refused: string } {
  const [, year, month, day, hour, minute, second = '0', fraction = '', zulu, sign, hours, minutes = '0'] =
    timeForm.exec(text) ?? [];
  if (year === undefined)
    return {
      refused: `${text} is no time of ISO 8601: write it like 2026-10-25T01:30:00 or 2026-10-25T01:30:00+01:00.`,
    };
  const local = localTime(Number(year), Number(month), Number(day), Number(hour), Number(minute), Number(second));
  if (local === undefined) return { refused: `${text} does not exist: no calendar has the day, or no clock the time.` };
  const exact = local + Number(`0.${fraction || '0'}`) * 1000;
  if (zulu !== undefined) return exact;
  if (sign !== undefined) {
    const offset = (Number(hours) * 60 + Number(minutes)) * 60_000;
    if (Number(hours) > 23 || Number(minutes) > 59) return { refused: `${text} has no offset that a clock can have.` };
    return sign === '-' ? exact + offset : exact - offset;
  }
  if (zone === undefined)
    return { refused: `The site does not say in which time zone ${text} is: add its offset from UTC, such as +01:00.` };
  const times = new LocalTimes(zone);
  const [first, again] = times.instants(exact);
  if (first === undefined)
    return {
      refused: `Clocks in ${zone} skipped ${text}: they went straight to ${clockOf(zone)(times.firstAtOrAfter(local))}.`,
    };
  if (again === undefined) return first;
  const [one, other] = [first, again].map(clockOf(zone));
  return { refused: `Clocks in ${zone} showed ${text} twice. Say which is meant: ${one ?? ''} or ${other ?? ''}.` };
}

function offsetText(milliseconds: number): string {
  const size = Math.abs(Math.trunc(milliseconds / 60_000));
  const two = (value: number): string => String(value).padStart(2, '0');
  return `${milliseconds < 0 ? '-' : '+'}${two(Math.floor(size / 60))}:${two(size % 60)}`;
}
