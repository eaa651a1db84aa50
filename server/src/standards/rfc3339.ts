/** Points in time as RFC 3339 and ISO 8601 write them. */

import { MINUTE, SECOND } from './time-units.ts';
import { localTime } from './time-zone.ts';

/**
 * RFC 3339 §5.6, read; a space for the T is allowed by its note. Seconds may be left out, a fraction may stand behind
 * a comma and an offset may be of hours alone, as ISO 8601 has it (from memory).
 */
const FORM =
  /^(\d{4})-(\d\d)-(\d\d)[T ](\d\d):(\d\d)(?::(\d\d)(?:[.,](\d{1,9}))?)?(?:(Z)|([+-])(\d\d)(?::?(\d\d))?)?$/i;

export interface WrittenTime {
  /** As `localTime` gives it, with the fraction of a millisecond; `undefined` where no calendar or clock has it. */
  readonly local: number | undefined;
  /** Milliseconds ahead of UTC; `undefined` where it is not said, NaN where no clock can have it. */
  readonly offset: number | undefined;
}

/** What is written; `undefined` where it has not the form. */
export function readWrittenTime(text: string): WrittenTime | undefined {
  const match = FORM.exec(text);
  if (match === null) return undefined;
  const [year = NaN, month = NaN, day = NaN, hour = NaN, minute = NaN, second = 0] = match
    .slice(1, 7)
    .map((digits) => Number(digits ?? 0));
  const whole = localTime({ year, month, day, hour, minute, second });
  const fraction = Number(`0.${match[7] ?? '0'}`) * SECOND;
  return { local: whole === undefined ? undefined : whole + fraction, offset: offsetOf(match) };
}

/** Milliseconds since 1970-01-01T00:00Z; `undefined` where it is no such time, or does not say its offset from UTC. */
export function parseInstant(text: string): number | undefined {
  const { local, offset } = readWrittenTime(text) ?? {};
  if (local === undefined || offset === undefined || Number.isNaN(offset)) return undefined;
  return Math.round(local - offset);
}

function offsetOf(match: RegExpExecArray): number | undefined {
  const [, , , , , , , , zulu, sign, hours = '0', minutes = '0'] = match;
  if (zulu !== undefined) return 0;
  if (sign === undefined) return undefined;
  if (Number(hours) > 23 || Number(minutes) > 59) return NaN;
  return (Number(hours) * 60 + Number(minutes)) * MINUTE * (sign === '-' ? -1 : 1);
}
