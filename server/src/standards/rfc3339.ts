/** Points in time as RFC 3339 writes them. */

import { localTime } from './local-time.ts';

/** RFC 3339 §5.6, read; a space for the T is allowed by its note, and seconds may be left out, as ISO 8601 has it. */
const FORM = /^(\d{4})-(\d\d)-(\d\d)[Tt ](\d\d):(\d\d)(?::(\d\d)(\.\d{1,9})?)?(?:[Zz]|([+-])(\d\d):?(\d\d))$/;

/** Milliseconds since 1970-01-01T00:00Z; `undefined` where it is no such time, or does not say its offset from UTC. */
export function parseInstant(text: string): number | undefined {
  const match = FORM.exec(text);
  if (match === null) return undefined;
  const [year = NaN, month = NaN, day = NaN, hour = NaN, minute = NaN] = match.slice(1, 6).map(Number);
  const local = localTime(year, month, day, hour, minute, Number(match[6] ?? 0));
  const [hours, minutes] = [Number(match[9] ?? 0), Number(match[10] ?? 0)];
  if (local === undefined || hours > 23 || minutes > 59) return undefined;
  const offset = (hours * 60 + minutes) * 60_000 * (match[8] === '-' ? -1 : 1);
  return local + Math.round(Number(`0${match[7] ?? ''}`) * 1000) - offset;
}
