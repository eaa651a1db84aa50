/** Times in the formats of RFC 3339 and ISO 8601. */

import { MINUTE, SECOND } from './time-units.ts';
import { localTime } from './time-zone.ts';

/**
 * RFC 3339 §5.6, read; its note allows a space for the T. As in ISO 8601 (from memory), seconds may be missing, a
 * fraction may follow a comma, and an offset may have hours only.
 */
const FORM =
  /^(\d{4})-(\d\d)-(\d\d)[T ](\d\d):(\d\d)(?::(\d\d)(?:[.,](\d{1,9}))?)?(?:(Z)|([+-])(\d\d)(?::?(\d\d))?)?$/i;

export interface ParsedTime {
  /** A local time, with fractions of a millisecond; `undefined` where no calendar or clock has it. */
  readonly local: number | undefined;
  /** Milliseconds ahead of UTC; `undefined` where it is missing, NaN where no clock can have it. */
  readonly offset: number | undefined;
}

/** `undefined` where the text does not have the format. */
export function parseTime(text: string): ParsedTime | undefined {
  const match = FORM.exec(text);
  if (match === null) return undefined;
  const [year = NaN, month = NaN, day = NaN, hour = NaN, minute = NaN, second = 0] = match
    .slice(1, 7)
    .map((digits) => Number(digits ?? 0));
  const whole = localTime({ year, month, day, hour, minute, second });
  const fraction = Number(`0.${match[7] ?? '0'}`) * SECOND;
  return { local: whole === undefined ? undefined : whole + fraction, offset: offsetOf(match) };
}

/** Milliseconds since 1970-01-01T00:00Z; `undefined` where the text is no time, or has no offset from UTC. */
export function parseInstant(text: string): number | undefined {
  const { local, offset } = parseTime(text) ?? {};
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
