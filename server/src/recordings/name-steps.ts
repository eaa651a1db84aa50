/** A file pattern made into steps, each of which reads a part of a path. No step needs to go back. */

import {
  COMPOSITES,
  type Conversion,
  MONTHS,
  type PatternPart,
  WEEKDAYS,
  fillOf,
  parsePattern,
} from '../standards/strftime.ts';

/** What a name can tell, and where in the row of what was read it stands. -1 stands for what was not read. */
export const SLOT = {
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

export const SLOTS = 19;

export type Step =
  | { readonly kind: 'text'; readonly text: string }
  /** Digits: `most` where that is `least`, padded with `fill`; else as many as there are and no leading zero. */
  | NumberStep
  /** One of the words, whose value is its place among them; at least `width` characters with the fill before it. */
  | {
      readonly kind: 'word';
      readonly slot: number;
      readonly words: readonly Word[];
      readonly width: number;
      readonly fill: string;
    }
  /** `+hhmm`; read as minutes. */
  | { readonly kind: 'offset'; readonly fill: string }
  /** An abbreviation such as `BST` or `-03`, which tells nothing for certain. */
  | { readonly kind: 'zone'; readonly fill: string };

export interface NumberStep {
  readonly kind: 'number';
  readonly slot: number;
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

/** Why a pattern cannot be read back. */
export interface Unreadable {
  readonly unreadable: string;
}

/** PATH_MAX of Linux (limits.h): no file has a longer path. */
const LONGEST = 4096;

/** The slot of a number, its digits, what fills them up, and the least and the greatest that strftime writes. */
const numbers: Readonly<
  Record<string, readonly [slot: number, digits: number, fill: string, from: number, to: number]>
> = {
  C: [SLOT.century, 2, '0', 0, 99],
  d: [SLOT.day, 2, '0', 1, 31],
  e: [SLOT.day, 2, ' ', 1, 31],
  G: [SLOT.weekYear, 4, '0', 1000, 9999],
  g: [SLOT.weekYearOfCentury, 2, '0', 0, 99],
  H: [SLOT.hour, 2, '0', 0, 23],
  I: [SLOT.hourOf12, 2, '0', 1, 12],
  j: [SLOT.dayOfYear, 3, '0', 1, 366],
  k: [SLOT.hour, 2, ' ', 0, 23],
  l: [SLOT.hourOf12, 2, ' ', 1, 12],
  M: [SLOT.minute, 2, '0', 0, 59],
  m: [SLOT.month, 2, '0', 1, 12],
  S: [SLOT.second, 2, '0', 0, 59],
  s: [SLOT.epoch, 1, '0', 0, 1e12],
  U: [SLOT.sundayWeek, 2, '0', 0, 53],
  u: [SLOT.weekday, 1, '0', 1, 7],
  V: [SLOT.isoWeek, 2, '0', 1, 53],
  W: [SLOT.mondayWeek, 2, '0', 0, 53],
  w: [SLOT.weekday, 1, '0', 0, 6],
  Y: [SLOT.year, 4, '0', 1000, 9999],
  y: [SLOT.yearOfCentury, 2, '0', 0, 99],
};

/** Seconds since 1970 have no more until the year 33658. */
const EPOCH_DIGITS = 12;

const short = (words: readonly string[]): string[] => words.map((word) => word.slice(0, 3));

const words: Readonly<Record<string, readonly [slot: number, words: readonly string[], first: number]>> = {
  A: [SLOT.weekday, WEEKDAYS, 0],
  a: [SLOT.weekday, short(WEEKDAYS), 0],
  B: [SLOT.month, MONTHS, 1],
  b: [SLOT.month, short(MONTHS), 1],
  h: [SLOT.month, short(MONTHS), 1],
  P: [SLOT.half, ['am', 'pm'], 0],
  p: [SLOT.half, ['AM', 'PM'], 0],
};

/** The steps of the pattern, whose paths are taken from the folder that it starts in: without `./` and `//`. */
export function stepsOf(pattern: string): readonly Step[] | Unreadable {
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

function stepsOfPart(part: PatternPart): Step[] {
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

function stepOf(part: Conversion): Step {
  const { specifier, flags, text, width } = part;
  const number = numbers[specifier];
  if (number !== undefined) {
    const [slot, digits, normal, from, to] = number;
    const fill = fillOf(part, normal);
    const total = fill === '' ? digits : Math.max(digits, width);
    if (specifier === 's' && total < EPOCH_DIGITS - 1)
      return { kind: 'number', slot, least: 1, most: EPOCH_DIGITS, fill: '', from, to };
    // A weekday of one digit and a year of four are written so by all flags.
    const fixed = fill !== '' || digits === 1 || digits === 4;
    return { kind: 'number', slot, least: fixed ? total : 1, most: total, fill, from, to };
  }
  const word = words[specifier];
  const fill = fillOf(part, ' ');
  if (word !== undefined) {
    const [slot, plain, first] = word;
    return { kind: 'word', slot, words: casesOf(plain, first, flags), width, fill };
  }
  if (specifier === 'z') return { kind: 'offset', fill };
  if (specifier === 'Z') return { kind: 'zone', fill };
  if (specifier === 'n' || specifier === 't')
    return { kind: 'text', text: (specifier === 'n' ? '\n' : '\t').padStart(width, fill) };
  return { kind: 'text', text };
}

/** Flags make capitals of words, or small letters of `%p`, or leave those inside `%c` alone: as one may, all are taken. */
function casesOf(plain: readonly string[], first: number, flags: string): Word[] {
  const listed = (cased: (word: string) => string): Word[] =>
    plain.map((word, index) => ({ text: cased(word), value: index + first }));
  const written = listed((word) => word);
  if (!/[\^#]/.test(flags)) return written;
  return [...written, ...listed((word) => word.toUpperCase()), ...listed((word) => word.toLowerCase())];
}

/** Whether what follows can be taken for more of the step. */
function unclearEnd(step: Step, next: Step | undefined): boolean {
  if (next === undefined) return false;
  if (step.kind === 'zone') return next.kind !== 'text' || /^[A-Za-z0-9]/.test(next.text);
  if (step.kind !== 'number' || step.least === step.most) return false;
  if (next.kind === 'text') return /^[0-9]/.test(next.text);
  return next.kind === 'number' || next.fill === '0';
}
