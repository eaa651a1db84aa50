/**
 * A pattern of conversions filled in for one time.
 *
 * Source: strftime(3) of Linux (glibc), read: the conversions of C99, POSIX and glibc, in the C locale.
 */

import type { Temporal } from 'temporal-polyfill';
import { COMPOSITES, type Conversion, MONTHS, WEEKDAYS, fillOf, parsePattern } from './strftime.ts';
import { SECOND } from './time-units.ts';
import { offsetMinutes, offsetText } from './time-zone.ts';

/**
 * The pattern filled in, in the C locale; a conversion that strftime does not know stays as it is.
 *
 * @param abbreviation of the zone, as `%Z` writes it
 */
export function format(pattern: string, time: Temporal.ZonedDateTime, abbreviation = ''): string {
  return fillIn(pattern, fieldsOf(time, abbreviation));
}

/** What conversions write; each value is read once. */
type Fields = ReturnType<typeof fieldsOf>;

function fieldsOf(time: Temporal.ZonedDateTime, abbreviation: string) {
  const shown = time.toPlainDateTime();
  const { year, month, day, hour, minute, second, dayOfWeek, dayOfYear, weekOfYear = 0, yearOfWeek = 0 } = shown;
  const clock = { hour, minute, second, epoch: Math.floor(time.epochMilliseconds / SECOND) };
  const date = { year, month, day, weekday: dayOfWeek % 7, dayOfYear, weekOfYear, yearOfWeek };
  return { ...date, ...clock, offset: offsetText(offsetMinutes(time)), abbreviation };
}

function fillIn(pattern: string, fields: Fields): string {
  return parsePattern(pattern)
    .map((part) => ('literal' in part ? part.literal : convert(part, fields)))
    .join('');
}

function convert(part: Conversion, fields: Fields): string {
  const { specifier, text, flags, width } = part;
  const composite = COMPOSITES[specifier];
  if (composite !== undefined) return fillIn(composite.pattern, fields).padStart(width, fillOf(part, ' '));
  const [value, digits, fill] = simple(specifier, fields) ?? [undefined, 0, ''];
  if (value === undefined) return text;
  const padding = fillOf(part, fill);
  if (typeof value === 'number') return String(value).padStart(Math.max(digits, width), padding);
  return (/[\^#]/.test(flags) ? value.toUpperCase() : value).padStart(width, padding);
}

/** The value of a simple conversion, its least digits, and what pads them. */
function simple(specifier: string, fields: Fields): readonly [string | number, number, string] | undefined {
  const { year, month, day, weekday, dayOfYear, weekOfYear, yearOfWeek, hour, minute, second } = fields;
  const number = (value: number, digits = 2, fill = '0') => [value, digits, fill] as const;
  const word = (value: string | undefined) => [value ?? '', 0, ' '] as const;
  switch (specifier) {
    case 'a':
      return word(WEEKDAYS[weekday]?.slice(0, 3));
    case 'A':
      return word(WEEKDAYS[weekday]);
    case 'b':
    case 'h':
      return word(MONTHS[month - 1]?.slice(0, 3));
    case 'B':
      return word(MONTHS[month - 1]);
    case 'C':
      return number(Math.floor(year / 100));
    case 'd':
      return number(day);
    case 'e':
      return number(day, 2, ' ');
    case 'G':
      return number(yearOfWeek, 1);
    case 'g':
      return number(yearOfWeek % 100);
    case 'H':
      return number(hour);
    case 'I':
      return number(hour % 12 || 12);
    case 'j':
      return number(dayOfYear, 3);
    case 'k':
      return number(hour, 2, ' ');
    case 'l':
      return number(hour % 12 || 12, 2, ' ');
    case 'M':
      return number(minute);
    case 'm':
      return number(month);
    case 'n':
      return word('\n');
    case 'P':
      return word(hour < 12 ? 'am' : 'pm');
    case 'p':
      return word(hour < 12 ? 'AM' : 'PM');
    case 'S':
      return number(second);
    case 's':
      return number(fields.epoch, 1);
    case 't':
      return word('\t');
    case 'U':
      return number(Math.floor((dayOfYear + 6 - weekday) / 7));
    case 'u':
      return number(weekday || 7, 1);
    case 'V':
      return number(weekOfYear);
    case 'W':
      return number(Math.floor((dayOfYear + 6 - ((weekday + 6) % 7)) / 7));
    case 'w':
      return number(weekday, 1);
    case 'Y':
      return number(year, 1);
    case 'y':
      return number(year % 100);
    case 'Z':
      return word(fields.abbreviation);
    case 'z':
      return word(fields.offset);
    default:
      return undefined;
  }
}
