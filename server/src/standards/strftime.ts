/**
 * Patterns of file names with conversions for the time, and which times they distinguish.
 *
 * Source: strftime(3) of Linux (glibc), read: the conversions of C99, POSIX and glibc, in the C locale.
 */

/** Plain text or a conversion. */
export type PatternPart = { readonly literal: string } | Conversion;

export interface Conversion {
  /** Its letter. */
  readonly specifier: string;
  /** All of it, with flags, width and modifier. */
  readonly text: string;
  /** One of `-`, `_`, `0`, `^` and `#`, or several, or none. */
  readonly flags: string;
  readonly width: number;
}

export type TimeUnit = 'second' | 'minute' | 'hour' | 'day' | 'week' | 'month' | 'year';

/** The time after which names repeat. */
export type Cycle = TimeUnit | 'half day';

const conversion = /%([-_0^#]*)([0-9]*)[EO]?([A-Za-z%])/g;

/** Conversions that are short for several others, and how many characters they write. */
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

/** The facts of the time that each simple conversion gives; empty where it gives none. */
const FACTS: Readonly<Record<string, string>> = {
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
 * The parts of a pattern. `%%` is literal, and so is a `%` without a letter after it. A letter that strftime does not
 * know is a conversion all the same, see `isSpecifier`.
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
  return specifier in COMPOSITES || specifier in FACTS;
}

/** The finest unit of time that the pattern has, even where it lacks a coarser one. */
export function resolution(pattern: string): TimeUnit | 'none' {
  const facts = factsOf(pattern);
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
  ).find(([, wanted]) => wanted.some((fact) => facts.has(fact)));
  return finest?.[0] ?? 'none';
}

/**
 * After what time names repeat, as a coarser unit is missing: `%H-%M` every day, `%Y_%S` every minute, `%d` every
 * month. `undefined` if they never do, other than by the clock going back or a year of two digits. Only where
 * `resolution` is not 'none'.
 */
export function repeatsEvery(pattern: string): Cycle | undefined {
  const facts = factsOf(pattern);
  const finest = resolution(pattern);
  if (facts.has('epoch')) {
    return undefined;
  }
  if (finest === 'second' && !facts.has('minute')) {
    return 'minute';
  }
  const withinDay = finest === 'second' || finest === 'minute' || finest === 'hour';
  if (withinDay && !facts.has('hour')) {
    if (!facts.has('hour of 12')) {
      return 'hour';
    }
    if (!facts.has('half day')) {
      return 'half day';
    }
  }
  return cycleOfDates(facts, withinDay);
}

/** Whether names from the two passes of a repeated hour differ: by offset, zone or seconds since the epoch. */
export function distinguishesRepeatedHour(pattern: string): boolean {
  const facts = factsOf(pattern);
  return facts.has('offset') || facts.has('epoch');
}

function cycleOfDates(facts: ReadonlySet<string>, needsDay: boolean): Cycle | undefined {
  const year = facts.has('year') ? undefined : 'year';
  if (facts.has('day of year') || (facts.has('week') && facts.has('weekday'))) {
    return year;
  }
  if (facts.has('day of month')) {
    return facts.has('month') ? year : 'month';
  }
  if (facts.has('weekday')) {
    return 'week';
  }
  return needsDay ? 'day' : year;
}

/** All facts of the time that the pattern's conversions give. */
function factsOf(pattern: string): Set<string> {
  const facts = parsePattern(pattern).flatMap((part) => {
    if ('literal' in part) return [];
    const composite = COMPOSITES[part.specifier];
    return composite === undefined ? [FACTS[part.specifier] ?? ''] : [...factsOf(composite.pattern)];
  });
  return new Set(facts.filter((fact) => fact !== ''));
}

/** The padding of a conversion on the left, if any. The last of the flags `-`, `_` and `0` decides. */
export function fillOf({ flags }: Conversion, usual: string): string {
  const flag = /[-_0](?=[^-_0]*$)/.exec(flags)?.[0];
  return flag === '-' ? '' : flag === '_' ? ' ' : (flag ?? usual);
}

/** In the C locale. */
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
