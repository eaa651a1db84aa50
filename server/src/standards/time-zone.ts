/**
 * Civil time: what clocks in a zone show, and which instants a time on them can mean.
 *
 * Source: the IANA time-zone database of the JavaScript engine, read by Temporal (ECMA-262). Instants are
 * milliseconds since 1970-01-01T00:00Z. A local time is given as the instant at which a clock of UTC shows the same.
 */

import { Temporal } from 'temporal-polyfill';
import { HOUR, MINUTE, SECOND } from './time-units.ts';

/** Whether the name is a zone of the database, such as `Europe/London` or `UTC`, in any case; a bare offset is none. */
export function isTimeZone(name: string): boolean {
  try {
    // Temporal also takes the zone of a whole timestamp.
    return /^[A-Za-z]/.test(name) && zonedTime(name, 0).timeZoneId.toLowerCase() === name.toLowerCase();
  } catch (error) {
    if (error instanceof RangeError) return false;
    throw error;
  }
}

/**
 * What clocks in the zone show at the instant.
 *
 * @param zone a zone of the database, or an offset from UTC such as `+0100`
 * @throws RangeError if there is no such zone
 */
export function zonedTime(zone: string, instant: number): Temporal.ZonedDateTime {
  return Temporal.Instant.fromEpochMilliseconds(instant).toZonedDateTimeISO(zone);
}

/** Minutes that the clock is ahead of UTC; a fraction where a zone kept local mean time. */
export function offsetMinutes({ offsetNanoseconds }: Temporal.ZonedDateTime): number {
  return offsetNanoseconds / 6e10;
}

/** `+0100`, `-0330`: an offset from UTC of so many minutes. */
export function offsetText(minutes: number): string {
  const size = Math.abs(Math.trunc(minutes));
  const digits = Math.floor(size / 60) * 100 + (size % 60);
  return `${minutes < 0 ? '-' : '+'}${String(digits).padStart(4, '0')}`;
}

/** At `instant` the clock goes back from offset `before` to `after`, in minutes, and repeats the time between. */
export interface RepeatedHour {
  readonly instant: number;
  readonly before: number;
  readonly after: number;
}

/**
 * Every time the clock goes back in the zone, from `from` up to but not including `to`, in order.
 *
 * @throws RangeError if there is no such zone
 */
export function repeatedHours(zone: string, from: number, to: number): RepeatedHour[] {
  const found: RepeatedHour[] = [];
  let time = zonedTime(zone, Math.ceil(from) - 1);
  for (;;) {
    const next = time.getTimeZoneTransition('next');
    if (next === null || next.epochMilliseconds >= to) return found;
    const [before, after] = [offsetMinutes(time), offsetMinutes(next)];
    if (after < before) found.push({ instant: next.epochMilliseconds, before, after });
    time = next;
  }
}

/** A day and a time on a clock; month and day from 1, midnight where no time is given. */
export interface LocalFields {
  readonly year: number;
  readonly month: number;
  readonly day: number;
  readonly hour?: number;
  readonly minute?: number;
  readonly second?: number;
}

/** The local time as a number; `undefined` where the calendar has no such day or the clock no such time. */
export function localTime({ year, month, day, hour = 0, minute = 0, second = 0 }: LocalFields): number | undefined {
  if (month < 1 || month > 12 || day < 1 || hour > 23 || minute > 59 || second >= 60) return undefined;
  // Date.UTC takes the years 0 to 99 for those of the 1900s.
  const midnight = year > 99 ? Date.UTC(year, month - 1, day) : new Date(0).setUTCFullYear(year, month - 1, day);
  // The 31st of a month of 30 days has become the 1st of the next.
  if (day > 28 && new Date(midnight).getUTCDate() !== day) return undefined;
  return midnight + hour * HOUR + minute * MINUTE + second * SECOND;
}

/** Local times from `from` up to `to`, none of which is repeated or skipped; `offset` in milliseconds. */
interface PlainSpan {
  readonly from: number;
  readonly to: number;
  readonly offset: number;
}

/** Which instants local times of a zone mean, for millions of questions: most fall where the last one fell. */
export class LocalTimes {
  private readonly zone: string;
  private plain: PlainSpan = { from: Infinity, to: -Infinity, offset: 0 };

  /** @throws RangeError if there is no such zone */
  constructor(zone: string) {
    this.zone = zone;
    zonedTime(zone, 0);
  }

  /** In order: one; two where the clocks went back and showed the time again; none where they skipped it. */
  instants(local: number): number[] {
    if (local >= this.plain.from && local < this.plain.to) return [local - this.plain.offset];
    const whole = Math.floor(local);
    const fraction = local - whole;
    const [first, last] = [this.meant(whole, 'earlier'), this.meant(whole, 'later')];
    if (first.epochMilliseconds === last.epochMilliseconds) {
      this.plain = plainAround(first);
      return [first.epochMilliseconds + fraction];
    }
    const isSkipped = first.epochMilliseconds + offsetOf(first) !== whole;
    return isSkipped ? [] : [first.epochMilliseconds + fraction, last.epochMilliseconds + fraction];
  }

  /**
   * The first instant at which clocks show this time or a later one: for the start of a day whose midnight is skipped.
   */
  firstAtOrAfter(local: number): number {
    const [first] = this.instants(local);
    return first ?? this.meant(Math.floor(local), 'earlier').getTimeZoneTransition('next')?.epochMilliseconds ?? local;
  }

  private meant(local: number, disambiguation: 'earlier' | 'later'): Temporal.ZonedDateTime {
    return zonedTime('UTC', local).toPlainDateTime().toZonedDateTime(this.zone, { disambiguation });
  }
}

function plainAround(time: Temporal.ZonedDateTime): PlainSpan {
  const offset = offsetOf(time);
  // A change at the very instant is the start of its span.
  const start = time.add({ nanoseconds: 1 }).getTimeZoneTransition('previous');
  const end = time.getTimeZoneTransition('next');
  const before = start?.subtract({ nanoseconds: 1 });
  return {
    from:
      start === null || before === undefined ? -Infinity : start.epochMilliseconds + Math.max(offset, offsetOf(before)),
    to: end === null ? Infinity : end.epochMilliseconds + Math.min(offset, offsetOf(end)),
    offset,
  };
}

function offsetOf({ offsetNanoseconds }: Temporal.ZonedDateTime): number {
  return offsetNanoseconds / 1e6;
}
