/**
 * Quantities: a number, a space and a unit, read exactly.
 * Bit rates count in powers of 1000; sizes in bytes, in powers of 1000 (kB) or 1024 (KiB), IEC 80000-13.
 *
 * Long by its tables of units, one for each kind of quantity.
 */

import { LEVEL_OF_MILLIVOLT, LEVEL_OF_MILLIWATT } from '../standards/television/level.ts';
import { DAY, HOUR, MINUTE, SECOND } from '../standards/time-units.ts';

export type QuantityKind =
  | 'bit-rate'
  | 'byte-rate'
  | 'size'
  | 'duration'
  | 'length'
  | 'power'
  | 'mass'
  | 'apparent-power'
  | 'energy'
  | 'percentage'
  | 'frequency'
  | 'ratio'
  | 'level'
  | 'voltage'
  | 'current'
  | 'symbol-rate'
  | 'area';

export interface Quantity {
  readonly kind: QuantityKind;
  /**
   * bit-rate: bit/s · byte-rate: byte/s · size: byte · duration: ms · length: mm · power: mW · mass: g ·
   * apparent-power: mVA · energy: mWh · percentage: ten-thousandths of the whole · frequency: Hz ·
   * ratio: thousandths of a dB · level: thousandths of the unit, whose zero differs (see `levelOf`) · voltage: mV ·
   * current: mA · symbol-rate: Bd · area: hundredths of mm².
   */
  readonly value: number;
  readonly unit: string;
}

interface Unit {
  readonly kind: QuantityKind;
  readonly factor: number;
}

const K = 1000;
const Ki = 1024;

const UNITS: ReadonlyMap<string, Unit> = new Map<string, Unit>([
  ['b/s', { kind: 'bit-rate', factor: 1 }],
  ['kb/s', { kind: 'bit-rate', factor: K }],
  ['Mb/s', { kind: 'bit-rate', factor: K ** 2 }],
  ['Gb/s', { kind: 'bit-rate', factor: K ** 3 }],
  ...(
    [
      ['B', 1],
      ['kB', K],
      ['MB', K ** 2],
      ['GB', K ** 3],
      ['TB', K ** 4],
      ['KiB', Ki],
      ['MiB', Ki ** 2],
      ['GiB', Ki ** 3],
      ['TiB', Ki ** 4],
    ] as const
  ).flatMap(([name, factor]): [string, Unit][] => [
    [name, { kind: 'size', factor }],
    [`${name}/s`, { kind: 'byte-rate', factor }],
  ]),
  ['ms', { kind: 'duration', factor: 1 }],
  ['s', { kind: 'duration', factor: SECOND }],
  ['min', { kind: 'duration', factor: MINUTE }],
  ['h', { kind: 'duration', factor: HOUR }],
  ['d', { kind: 'duration', factor: DAY }],
  ['m', { kind: 'length', factor: K }],
  ['mm', { kind: 'length', factor: 1 }],
  ['W', { kind: 'power', factor: K }],
  ['kg', { kind: 'mass', factor: K }],
  ['g', { kind: 'mass', factor: 1 }],
  ['VA', { kind: 'apparent-power', factor: K }],
  ['Wh', { kind: 'energy', factor: K }],
  ['%', { kind: 'percentage', factor: 100 }],
  ['Hz', { kind: 'frequency', factor: 1 }],
  ['kHz', { kind: 'frequency', factor: K }],
  ['MHz', { kind: 'frequency', factor: K ** 2 }],
  ['GHz', { kind: 'frequency', factor: K ** 3 }],
  ['dB', { kind: 'ratio', factor: K }],
  ...['dBµV', 'dBuV', 'dBmV', 'dBm'].map((name): [string, Unit] => [name, { kind: 'level', factor: K }]),
  ['V', { kind: 'voltage', factor: K }],
  ['mA', { kind: 'current', factor: 1 }],
  ['A', { kind: 'current', factor: K }],
  ['kBd', { kind: 'symbol-rate', factor: K }],
  ['MBd', { kind: 'symbol-rate', factor: K ** 2 }],
  ['mm²', { kind: 'area', factor: 100 }],
]);

/** Units of a kind, the usual one first. */
export function unitsOf(kind: QuantityKind): string[] {
  const names = [...UNITS].filter(([, unit]) => unit.kind === kind).map(([name]) => name);
  const usual = USUAL_UNIT[kind];
  return [usual, ...names.filter((name) => name !== usual)];
}

export const USUAL_UNIT: Readonly<Record<QuantityKind, string>> = {
  'bit-rate': 'Mb/s',
  'byte-rate': 'MB/s',
  'size': 'GB',
  'duration': 's',
  'length': 'm',
  'power': 'W',
  'mass': 'kg',
  'apparent-power': 'VA',
  'energy': 'Wh',
  'percentage': '%',
  'frequency': 'kHz',
  'ratio': 'dB',
  'level': 'dBµV',
  'voltage': 'V',
  'current': 'mA',
  'symbol-rate': 'MBd',
  'area': 'mm²',
};

export type QuantityFault =
  | { readonly fault: 'not-a-quantity' }
  | { readonly fault: 'no-unit'; readonly number: string }
  | { readonly fault: 'no-space'; readonly suggestions: readonly string[] }
  | { readonly fault: 'unknown-unit'; readonly unit: string; readonly suggestions: readonly string[] }
  /** Such as a bit rate in bytes; suggests the same number, then the same amount. */
  | {
      readonly fault: 'wrong-kind';
      readonly unit: string;
      readonly found: QuantityKind;
      readonly suggestions: readonly string[];
    }
  /** Zero of a quantity that is never zero. */
  | { readonly fault: 'nothing' }
  /** A fraction of the smallest unit. */
  | { readonly fault: 'not-exact' }
  | { readonly fault: 'too-large' }
  /** A value that no coax, no part of an aerial system and no multiplex has. */
  | { readonly fault: 'beyond'; readonly bounds: Bounds };

interface Bounds {
  readonly least: number;
  readonly most: number;
  readonly unit: string;
}

/** Common practice: no receiver locks to less, no amplifier puts out more, and no transponder is wider. */
const BOUNDS: Partial<Readonly<Record<QuantityKind, Bounds>>> = {
  'level': { least: -20, most: 150, unit: 'dBµV' },
  'ratio': { least: -150, most: 150, unit: 'dB' },
  'symbol-rate': { least: 0.1, most: 100, unit: 'MBd' },
};

/** What the units of levels count from, as dBµV at 75 Ω. */
const ZERO_OF: Readonly<Record<string, number>> = {
  dBµV: 0,
  dBuV: 0,
  dBmV: LEVEL_OF_MILLIVOLT,
  dBm: LEVEL_OF_MILLIWATT,
};

const FORM = /^(-?)(\d+)(?:\.(\d+))?( *)([^\d\s.,-][^\s]*)?$/u;

/** Reads `text` as a quantity of `kind`, exactly, or says what is wrong with it. */
export function readQuantity(text: string, kind: QuantityKind): Quantity | QuantityFault {
  if (text.length > 64) return { fault: 'not-a-quantity' };
  const match = FORM.exec(text.trim());
  if (match === null) return { fault: 'not-a-quantity' };
  const [, sign = '', whole = '', fraction = '', space = '', unitName] = match;
  const number = fraction === '' ? `${sign}${whole}` : `${sign}${whole}.${fraction}`;
  if (unitName === undefined) return { fault: 'no-unit', number };
  const unit = UNITS.get(unitName);
  if (unit === undefined) {
    const bytes =
      kind === 'bit-rate' && IN_BYTES.test(unitName) ? UNITS.get(nearUnit(unitName, 'byte-rate') ?? '') : undefined;
    const amount = Number(number) * (lookUp(FOREIGN[kind], unitName.toLowerCase()) ?? NaN);
    const suggestions = [
      ...sameNumber(number, unitName, kind),
      ...(bytes === undefined ? [] : sameAmount(number, bytes, kind)),
      ...(amount > 0 && amount <= Number.MAX_SAFE_INTEGER ? [formatQuantity(Math.round(amount), kind)] : []),
    ];
    return { fault: 'unknown-unit', unit: unitName, suggestions };
  }
  if (unit.kind !== kind) {
    const suggestions = [...sameNumber(number, unitName, kind), ...sameAmount(number, unit, kind)];
    return { fault: 'wrong-kind', unit: unitName, found: unit.kind, suggestions };
  }
  if (space !== ' ' || text !== text.trim()) return { fault: 'no-space', suggestions: [`${number} ${unitName}`] };
  if (sign === '-' && kind !== 'level' && kind !== 'ratio') return { fault: 'not-a-quantity' };
  const scaled = BigInt(whole + fraction) * BigInt(unit.factor);
  const divisor = 10n ** BigInt(fraction.length);
  if (scaled % divisor !== 0n) return { fault: 'not-exact' };
  const value = (scaled / divisor) * (sign === '-' ? -1n : 1n);
  if (value > BigInt(Number.MAX_SAFE_INTEGER)) return { fault: 'too-large' };
  const bounds = BOUNDS[kind];
  if (bounds !== undefined && value !== 0n) {
    const amount = Number(value) / (UNITS.get(bounds.unit)?.factor ?? 1) + (ZERO_OF[unitName] ?? 0);
    if (amount < bounds.least || amount > bounds.most) return { fault: 'beyond', bounds };
  }
  return { kind, value: Number(value), unit: unitName };
}

/** Kinds that may be zero: a part may lose nothing, draw nothing, be joined without a cable. */
const MAY_BE_ZERO: ReadonlySet<QuantityKind> = new Set([
  'percentage',
  'ratio',
  'level',
  'length',
  'mass',
  'power',
  'current',
]);

/** As `readQuantity`, but zero is a fault unless the kind allows it. */
export function readPositive(text: string, kind: QuantityKind): Quantity | QuantityFault {
  const read = readQuantity(text, kind);
  return isQuantity(read) && read.value === 0 && !MAY_BE_ZERO.has(kind) ? { fault: 'nothing' } : read;
}

export function isQuantity(read: Quantity | QuantityFault): read is Quantity {
  return !('fault' in read);
}

/** The value of a quantity; `undefined` where the text is missing or cannot be read, which a rule reports. */
export function quantity(text: unknown, kind: QuantityKind): number | undefined {
  if (typeof text !== 'string') return undefined;
  const read = readQuantity(text, kind);
  return isQuantity(read) ? read.value : undefined;
}

/** A level in dBµV, in whichever unit it is written; `undefined` where it cannot be read. */
export function levelOf(text: unknown): number | undefined {
  if (typeof text !== 'string') return undefined;
  const read = readQuantity(text, 'level');
  return isQuantity(read) ? read.value / K + (ZERO_OF[read.unit] ?? 0) : undefined;
}

/** Decibels; `undefined` where they cannot be read. */
export function decibelsOf(text: unknown): number | undefined {
  const value = quantity(text, 'ratio');
  return value === undefined ? undefined : value / K;
}

/** Lowest and highest of a range such as `470-694 MHz`, Hz. */
export interface FrequencyRange {
  readonly from: number;
  readonly to: number;
}

/** `undefined` where it cannot be read, or ends before it begins. */
export function readFrequencyRange(text: unknown): FrequencyRange | undefined {
  const match = typeof text === 'string' ? /^([\d.]+)-([\d.]+) (MHz|GHz)$/.exec(text) : null;
  const [from, to] = [match?.[1], match?.[2]].map((number) =>
    quantity(`${number ?? ''} ${match?.[3] ?? ''}`, 'frequency'),
  );
  return from === undefined || to === undefined || from >= to ? undefined : { from, to };
}

/** `MBps`, `MByte/s`, `Mo/s`: most likely bytes. */
const IN_BYTES = /^(?:[kKmMgGtT]i?)?(?:B(?!it)|[bB]yte|o)/;

/** The unit that a misspelling such as `Mbps`, `mbit/s`, `sec` or `gb` means. */
function nearUnit(name: string, kind: QuantityKind): string | undefined {
  const spoken = /^([kmgt]i?)?(b|bits?|bytes?|bps|o)(?:ps|\/s|\/sec)?$/i.exec(name);
  if ((kind === 'bit-rate' || kind === 'byte-rate' || kind === 'size') && spoken !== null) {
    const letter = (spoken[1] ?? '').charAt(0).toLowerCase();
    const bytes = kind === 'size' || kind === 'byte-rate';
    const prefix = letter === 'k' ? 'k' : letter.toUpperCase();
    const unit = `${prefix}${bytes ? 'B' : 'b'}${kind === 'size' ? '' : '/s'}`;
    if (UNITS.has(unit)) return unit;
  }
  const lower = name.toLowerCase();
  const same = unitsOf(kind).find((unit) => unit.toLowerCase() === lower);
  if (same !== undefined) return same;
  return lookUp(SPOKEN[kind], lower);
}

const SPOKEN: Partial<Record<QuantityKind, Readonly<Record<string, string>>>> = {
  duration: {
    sec: 's',
    secs: 's',
    second: 's',
    seconds: 's',
    minute: 'min',
    minutes: 'min',
    mins: 'min',
    hour: 'h',
    hours: 'h',
    hr: 'h',
    hrs: 'h',
    day: 'd',
    days: 'd',
    msec: 'ms',
    milliseconds: 'ms',
  },
  length: { metre: 'm', metres: 'm', meter: 'm', meters: 'm' },
  power: { watt: 'W', watts: 'W' },
  mass: { kilo: 'kg', kilos: 'kg', kilogram: 'kg', kilograms: 'kg', gram: 'g', grams: 'g' },
  percentage: { percent: '%', pct: '%' },
  voltage: { volt: 'V', volts: 'V' },
  current: { amp: 'A', amps: 'A', ampere: 'A' },
  area: { mm2: 'mm²', sqmm: 'mm²' },
};

/** Units that the language does not have, in lower case, as multiples of the smallest unit of their kind. */
const FOREIGN: Partial<Record<QuantityKind, Readonly<Record<string, number>>>> = {
  'size': { pb: K ** 5 },
  'duration': { w: 7 * DAY, week: 7 * DAY, weeks: 7 * DAY },
  'length': { cm: 10, km: K ** 2 },
  'mass': { lb: 454, lbs: 454, t: K ** 2 },
  'power': { kw: K ** 2 },
  'apparent-power': { kva: K ** 2 },
  'energy': { kwh: K ** 2 },
};

/** The entry of a table, without what every object inherits, such as `constructor`. */
function lookUp<T>(table: Readonly<Record<string, T>> | undefined, word: string): T | undefined {
  return table !== undefined && Object.hasOwn(table, word) ? table[word] : undefined;
}

/** The same number in the unit that was meant: `6 MB/s` for `6 Mb/s`. */
function sameNumber(number: string, unitName: string, kind: QuantityKind): string[] {
  const meant = nearUnit(unitName, kind);
  return meant === undefined ? [] : [`${number} ${meant}`];
}

/** The same amount where bits per second and bytes per second were mixed up: `6 MB/s` is `48 Mb/s`. */
function sameAmount(number: string, unit: Unit, kind: QuantityKind): string[] {
  if (kind === 'bit-rate' && unit.kind === 'byte-rate') return [formatQuantity(Number(number) * unit.factor * 8, kind)];
  if (kind === 'byte-rate' && unit.kind === 'bit-rate')
    return [formatQuantity((Number(number) * unit.factor) / 8, kind)];
  return [];
}

/** A duration as a whole number, in the unit of `like` if possible, else in the largest unit. */
export function durationLike(milliseconds: number, like: unknown): string {
  const read = typeof like === 'string' ? readQuantity(like, 'duration') : undefined;
  const names = ['d', 'h', 'min', 's', 'ms'];
  if (read !== undefined && isQuantity(read)) names.unshift(read.unit);
  const unit = names.find((name) => milliseconds % (UNITS.get(name)?.factor ?? 1) === 0) ?? 'ms';
  return `${milliseconds / (UNITS.get(unit)?.factor ?? 1)} ${unit}`;
}

/** `48 Mb/s`: the value in the largest unit that keeps it exact with three decimals. */
export function formatQuantity(value: number, kind: QuantityKind): string {
  const candidates = [...UNITS]
    .filter(([name, unit]) => unit.kind === kind && !/^[KMGT]iB/.test(name))
    .sort(([, a], [, b]) => b.factor - a.factor);
  for (const [name, unit] of candidates) {
    const amount = value / unit.factor;
    if (
      amount >= 1 &&
      Number.isInteger(Math.round(amount * 1000)) &&
      Math.abs(amount * 1000 - Math.round(amount * 1000)) < 1e-9
    ) {
      return `${Math.round(amount * 1000) / 1000} ${name}`;
    }
  }
  const smallest = candidates[candidates.length - 1];
  return smallest === undefined ? String(value) : `${value / smallest[1].factor} ${smallest[0]}`;
}
