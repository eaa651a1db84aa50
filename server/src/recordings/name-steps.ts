/** A file pattern as steps, each of which reads a part of a path. No step needs to backtrack. */

import {
  COMPOSITES,
  type Conversion,
  MONTHS,
  type PatternPart,
  WEEKDAYS,
  fillOf,
  parsePattern,
} from '../standards/strftime.ts';

/** The fields of a name: the index of each value in `NameFields`. */
export const FIELD = {
  year: 0,
  century: 1,
  yearOfCentury: 2,
  month: 3,
  day: 4,
  dayOfYear: 5,
  weekday: 6,
  weekYear: 7,
  weekYearOfCentury: 8,
  isoWeek: 9,
  sundayWeek: 10,
  mondayWeek: 11,
  hour: 12,
  hourOf12: 13,
  half: 14,
  minute: 15,
  second: 16,
  epoch: 17,
  offset: 18,
} as const;

export const FIELD_COUNT = 19;

export type NameStep =
  | { readonly kind: 'text'; readonly text: string }
  /** Digits: exactly `most`, padded with `fill`, where that is also `least`; else without leading zeros. */
  | NumberStep
  /** One of the words, padded to `width` with `fill`. */
  | {
      readonly kind: 'word';
      readonly field: number;
      readonly words: readonly Word[];
      readonly width: number;
      readonly fill: string;
    }
  /** `+hhmm`, read as minutes. */
  | { readonly kind: 'offset'; readonly fill: string }
  /** An abbreviation such as `BST` or `-03`, which is ambiguous. */
  | { readonly kind: 'zone'; readonly fill: string };

export interface NumberStep {
  readonly kind: 'number';
  readonly field: number;
  readonly least: number;
  readonly most: number;
  readonly fill: string;
  readonly from: number;
  readonly to: number;
}

interface Word {
  readonly text: string;
  readonly value: number;
}

/** Why names of a pattern cannot be read. */
export interface Unreadable {
  readonly unreadable: string;
}

/** PATH_MAX of Linux (limits.h): no file has a longer path. */
const LONGEST = 4096;

/** By conversion: its field, its digits, what pads it, and the least and the greatest number that strftime writes. */
const numbers: Readonly<
  Record<string, readonly [field: number, digits: number, fill: string, from: number, to: number]>
> = {
  C: [FIELD.century, 2, '0', 0, 99],
  d: [FIELD.day, 2, '0', 1, 31],
  e: [FIELD.day, 2, ' ', 1, 31],
  G: [FIELD.weekYear, 4, '0', 1000, 9999],
  g: [FIELD.weekYearOfCentury, 2, '0', 0, 99],
  H: [FIELD.hour, 2, '0', 0, 23],
  I: [FIELD.hourOf12, 2, '0', 1, 12],
  j: [FIELD.dayOfYear, 3, '0', 1, 366],
  k: [FIELD.hour, 2, ' ', 0, 23],
  l: [FIELD.hourOf12, 2, ' ', 1, 12],
  M: [FIELD.minute, 2, '0', 0, 59],
  m: [FIELD.month, 2, '0', 1, 12],
  S: [FIELD.second, 2, '0', 0, 59],
  s: [FIELD.epoch, 1, '0', 0, 1e12],
  U: [FIELD.sundayWeek, 2, '0', 0, 53],
  u: [FIELD.weekday, 1, '0', 1, 7],
  V: [FIELD.isoWeek, 2, '0', 1, 53],
  W: [FIELD.mondayWeek, 2, '0', 0, 53],
  w: [FIELD.weekday, 1, '0', 0, 6],
  Y: [FIELD.year, 4, '0', 1000, 9999],
  y: [FIELD.yearOfCentury, 2, '0', 0, 99],
};

/** Seconds since 1970 have no more digits until the year 33658. */
const EPOCH_DIGITS = 12;

const short = (words: readonly string[]): string[] => words.map((word) => word.slice(0, 3));

const words: Readonly<Record<string, readonly [field: number, words: readonly string[], first: number]>> = {
  A: [FIELD.weekday, WEEKDAYS, 0],
  a: [FIELD.weekday, short(WEEKDAYS), 0],
  B: [FIELD.month, MONTHS, 1],
  b: [FIELD.month, short(MONTHS), 1],
  h: [FIELD.month, short(MONTHS), 1],
  P: [FIELD.half, ['am', 'pm'], 0],
  p: [FIELD.half, ['AM', 'PM'], 0],
};

/** The steps of the pattern, without `./` and `//`. */
export function stepsOf(pattern: string): readonly NameStep[] | Unreadable {
  if (pattern.split('/').includes('..')) return { unreadable: 'they lead out of their folder by “..”' };
  const parts = parsePattern(pattern.replace(/^(\.?\/)+/, '').replace(/\/(\.?\/)+/g, '/'));
  if (parts.some((part) => 'width' in part && part.width > LONGEST))
    return { unreadable: `they are longer than any path can be, ${LONGEST.toString()} bytes` };
  const steps = parts.flatMap(stepsOfPart);
  const unclear = steps.some((step, index) => unclearEnd(step, steps[index + 1]));
  return unclear
    ? { unreadable: 'it cannot be told where in them one conversion ends and the next part begins' }
    : steps;
}

function stepsOfPart(part: PatternPart): NameStep[] {
  if ('literal' in part) return [{ kind: 'text', text: part.literal }];
  const { specifier, flags, width } = part;
  const composite = COMPOSITES[specifier];
  if (composite !== undefined) {
    const fill = fillOf(part, ' ').repeat(Math.max(0, width - composite.width));
    const steps = parsePattern(composite.pattern).flatMap((inner) =>
      stepsOfPart('literal' in inner ? inner : { ...inner, flags: flags.replace(/[-_0]/g, '') }),
    );
    return fill === '' ? steps : [{ kind: 'text', text: fill }, ...steps];
  }
  return [stepOf(part)];
}

function stepOf(part: Conversion): NameStep {
  const { specifier, flags, text, width } = part;
  const number = numbers[specifier];
  if (number !== undefined) {
    const [field, digits, normal, from, to] = number;
    const fill = fillOf(part, normal);
    const total = fill === '' ? digits : Math.max(digits, width);
    if (specifier === 's' && total < EPOCH_DIGITS - 1)
      return { kind: 'number', field, least: 1, most: EPOCH_DIGITS, fill: '', from, to };
    // No flag changes the width of a weekday, one digit, or of a year, four.
    const fixed = fill !== '' || digits === 1 || digits === 4;
    return { kind: 'number', field, least: fixed ? total : 1, most: total, fill, from, to };
  }
  const word = words[specifier];
  const fill = fillOf(part, ' ');
  if (word !== undefined) {
    const [field, plain, first] = word;
    return { kind: 'word', field, words: casesOf(plain, first, flags), width, fill };
  }
  if (specifier === 'z') return { kind: 'offset', fill };
  if (specifier === 'Z') return { kind: 'zone', fill };
  if (specifier === 'n' || specifier === 't')
    return { kind: 'text', text: (specifier === 'n' ? '\n' : '\t').padStart(width, fill) };
  return { kind: 'text', text };
}

/**
 * Flags turn words into capitals, `%p` into small letters, and may leave those in `%c` alone: all forms are accepted.
 */
function casesOf(plain: readonly string[], first: number, flags: string): Word[] {
  const listed = (cased: (word: string) => string): Word[] =>
    plain.map((word, index) => ({ text: cased(word), value: index + first }));
  const usual = listed((word) => word);
  if (!/[\^#]/.test(flags)) return usual;
  return [...usual, ...listed((word) => word.toUpperCase()), ...listed((word) => word.toLowerCase())];
}

/** Whether the next step can start with what the step may take for its own. */
function unclearEnd(step: NameStep, next: NameStep | undefined): boolean {
  if (next === undefined) return false;
  if (step.kind === 'zone') return next.kind !== 'text' || /^[A-Za-z0-9]/.test(next.text);
  if (step.kind !== 'number' || step.least === step.most) return false;
  if (next.kind === 'text') return /^[0-9]/.test(next.text);
  return next.kind === 'number' || next.fill === '0';
}
