/**
 * File names made from the time of day: what a pattern of conversion specifications tells apart.
 *
 * Source: strftime(3) of Linux (glibc), read: the conversions of C99, POSIX and glibc, in the C locale.
 */

import type { Temporal } from 'temporal-polyfill';
import { SECOND } from './time-units.ts';
import { offsetMinutes, offsetText } from './time-zone.ts';

/** Plain text, or a conversion: `specifier` is its letter, `text` all of it, with flag, width and modifier. */
export type PatternPart = { readonly literal: string } | Conversion;

export interface Conversion {
  readonly specifier: string;
  readonly text: string;
  /** One of `-`, `_`, `0`, `^` and `#`, or several, or none. */
  readonly flags: string;
  readonly width: number;
}

export type TimeUnit = 'second' | 'minute' | 'hour' | 'day' | 'week' | 'month' | 'year';

/** A span after which names come again. */
export type Cycle = TimeUnit | 'half day';

const conversion = /%([-_0^#]*)([0-9]*)[EO]?([A-Za-z%])/g;

/** Conversions that stand for several others, and how many characters those write. */
export const COMPOSITES: Readonly<Record<string, { readonly pattern: string; readonly width: number }>> = {
  c: { pattern: '%a %b %e %H:%M:%S %Y', width: 24 },
  D: { pattern: '%m/%d/%y', width: 8 },
  F: { pattern: '%Y-%m-%d', width: 10 },
  R: { pattern: '%H:%M', width: 5 },
  r: { pattern: '%I:%M:%S %p', width: 11 },
  T: { pattern: '%H:%M:%S', width: 8 },
  X: { pattern: '%H:%M:%S', width: 8 },
  x: { pattern: '%m/%d/%y', width: 8 },
};

/** What each simple conversion tells of the time; those that tell nothing have an empty entry. */
const tells: Readonly<Record<string, string>> = {
  a: 'weekday',
  A: 'weekday',
  u: 'weekday',
  w: 'weekday',
  d: 'day of month',
  e: 'day of month',
  j: 'day of year',
  U: 'week',
  V: 'week',
  W: 'week',
  b: 'month',
  B: 'month',
  h: 'month',
  m: 'month',
  G: 'year',
  g: 'year',
  Y: 'year',
  y: 'year',
  C: '',
  H: 'hour',
  k: 'hour',
  I: 'hour of 12',
  l: 'hour of 12',
  p: 'half day',
  P: 'half day',
  M: 'minute',
  S: 'second',
  s: 'epoch',
  z: 'offset',
  Z: 'offset',
  n: '',
  t: '',
};

/**
 * The pattern in parts. `%%` is literal, and so is a `%` that nothing follows which could be a conversion; a letter
 * that strftime does not know is a conversion of that letter, see `isSpecifier`.
 */
export function parsePattern(text: string): PatternPart[] {
  const parts: PatternPart[] = [];
  let literal = '';
  let end = 0;
  const flush = (): void => {
    if (literal !== '') {
      parts.push({ literal });
    }
    literal = '';
  };
  for (const match of text.matchAll(conversion)) {
    const [whole, flags = '', width = '', specifier = ''] = match;
    literal += text.slice(end, match.index);
    end = match.index + whole.length;
    if (specifier === '%') {
      literal += '%';
    } else {
      flush();
      parts.push({ specifier, text: whole, flags, width: Number(width) });
    }
  }
  literal += text.slice(end);
  flush();
  return parts;
}

/** Whether strftime knows the letter after the `%`. */
export function isSpecifier(specifier: string): boolean {
  return specifier in COMPOSITES || specifier in tells;
}

/** The finest unit of time that the pattern names, whether or not it names all the coarser ones too. */
export function resolution(pattern: string): TimeUnit | 'none' {
  const told = toldBy(pattern);
  const finest = (
    [
      ['second', ['second', 'epoch']],
      ['minute', ['minute']],
      ['hour', ['hour', 'hour of 12']],
      ['day', ['day of month', 'day of year', 'weekday']],
      ['week', ['week']],
      ['month', ['month']],
      ['year', ['year']],
    ] as const
  ).find(([, facts]) => facts.some((fact) => told.has(fact)));
  return finest?.[0] ?? 'none';
}

/**
 * After how long names come again for want of a coarser unit: `%H-%M` every day, `%Y_%S` every minute, `%d` every
 * month. Undefined if they never do, the clock going back and a two-digit year apart. Only where `resolution` is not
 * 'none'.
 */
export function repeatsEvery(pattern: string): Cycle | undefined {
  const told = toldBy(pattern);
  const finest = resolution(pattern);
  if (told.has('epoch')) {
    return undefined;
  }
  if (finest === 'second' && !told.has('minute')) {
    return 'minute';
  }
  const withinDay = finest === 'second' || finest === 'minute' || finest === 'hour';
  if (withinDay && !told.has('hour')) {
    if (!told.has('hour of 12')) {
      return 'hour';
    }
    if (!told.has('half day')) {
      return 'half day';
    }
  }
  return cycleOfDates(told, withinDay);
}

/** Whether names from the two passes of a repeated hour differ: by offset, zone or seconds since the epoch. */
export function distinguishesRepeatedHour(pattern: string): boolean {
  const told = toldBy(pattern);
  return told.has('offset') || told.has('epoch');
}

/**
 * The pattern filled in, in the C locale; a conversion that strftime does not know stays as it is written.
 *
 * @param abbreviation of the zone, as `%Z` writes it
 */
export function format(pattern: string, time: Temporal.ZonedDateTime, abbreviation = ''): string {
  return fillIn(pattern, fieldsOf(time, abbreviation));
}

/** What conversions write, each read once. */
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

function cycleOfDates(told: ReadonlySet<string>, needsDay: boolean): Cycle | undefined {
  const year = told.has('year') ? undefined : 'year';
  if (told.has('day of year') || (told.has('week') && told.has('weekday'))) {
    return year;
  }
  if (told.has('day of month')) {
    return told.has('month') ? year : 'month';
  }
  if (told.has('weekday')) {
    return 'week';
  }
  return needsDay ? 'day' : year;
}

/** All that the pattern's conversions tell of the time. */
function toldBy(pattern: string): Set<string> {
  const told = new Set<string>();
  for (const part of parsePattern(pattern)) {
    if ('literal' in part) {
      continue;
    }
    const composite = COMPOSITES[part.specifier];
    const facts = composite === undefined ? [tells[part.specifier] ?? ''] : toldBy(composite.pattern);
    for (const fact of facts) {
      told.add(fact);
    }
  }
  told.delete('');
  return told;
}

export const WEEKDAYS: readonly string[] = [
  'Sunday',
  'Monday',
  'Tuesday',
  'Wednesday',
  'Thursday',
  'Friday',
  'Saturday',
];
export const MONTHS: readonly string[] = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
];

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

/** What pads a conversion on the left; empty where nothing does. The last of the flags `-`, `_` and `0` says it. */
export function fillOf({ flags }: Conversion, usual: string): string {
  const flag = /[-_0](?=[^-_0]*$)/.exec(flags)?.[0];
  return flag === '-' ? '' : flag === '_' ? ' ' : (flag ?? usual);
}

/** The value of a simple conversion, with the digits that it has at least and what fills them up. */
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
