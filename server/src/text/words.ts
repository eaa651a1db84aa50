/** Figures and lists for people to read. For display only: sums are exact, and rounded here. */

import { DAY, HOUR, MINUTE, SECOND } from '../standards/time-units.ts';

/** Three significant digits, or all digits of a longer whole number. */
function short(value: number): string {
  if (value === 0) return '0';
  const digits = Math.max(0, 2 - Math.floor(Math.log10(Math.abs(value))));
  const text = value.toFixed(Math.min(digits, 3));
  return text.includes('.') ? text.replace(/0+$/, '').replace(/\.$/, '') : text;
}

function scaled(value: number, base: number, units: readonly string[]): string {
  let index = 0;
  let amount = value;
  // 999.7 would be shown as 1000 of the smaller unit.
  while (Math.abs(amount) >= base * 0.9995 && index < units.length - 1) {
    amount /= base;
    index++;
  }
  return `${short(amount)} ${units[index] ?? ''}`;
}

/** bit/s as `1.12 Gb/s`. */
export function bitRate(bitsPerSecond: number): string {
  return scaled(bitsPerSecond, 1000, ['b/s', 'kb/s', 'Mb/s', 'Gb/s', 'Tb/s']);
}

/** `6.45 Mb/s, at most 9.67`: the second figure has its unit only where that differs. */
export function bitRateUpTo(nominal: number, peak: number): string {
  if (peak <= nominal) return bitRate(nominal);
  const [[, unit], [amount = '', peakUnit]] = [bitRate(nominal).split(' '), bitRate(peak).split(' ')];
  return `${bitRate(nominal)}, at most ${unit === peakUnit ? amount : bitRate(peak)}`;
}

/** Bytes as `3.63 TB`, in powers of 1000. */
export function bytes(amount: number): string {
  return scaled(amount, 1000, ['B', 'kB', 'MB', 'GB', 'TB', 'PB']);
}

/** Bytes as `3.3 TiB`, in powers of 1024. */
export function binaryBytes(amount: number): string {
  return scaled(amount, 1024, ['B', 'KiB', 'MiB', 'GiB', 'TiB', 'PiB']);
}

export function byteRate(bytesPerSecond: number): string {
  return `${bytes(bytesPerSecond)}/s`;
}

/** Milliwatts as `15.4 W`. */
export function watts(milliwatts: number): string {
  return `${Number((milliwatts / 1000).toFixed(2))} W`;
}

/** Computed milliwatts, rounded for reading: `159 W`, `7.79 W`. */
export function aboutWatts(milliwatts: number): string {
  return `${short(milliwatts / 1000)} W`;
}

/** Milli-volt-amperes as `167 VA`. */
export function voltAmperes(amount: number): string {
  return `${short(amount / 1000)} VA`;
}

/** Milliwatt-hours as `368 Wh`. */
export function wattHours(amount: number): string {
  return `${short(amount / 1000)} Wh`;
}

/** Milliseconds that a battery lasts, rounded down to minutes: `44 min`, `1 h 24 min`. */
export function runtime(milliseconds: number): string {
  const unit = milliseconds < MINUTE ? SECOND : MINUTE;
  return milliseconds < SECOND ? '0 s' : duration(milliseconds - (milliseconds % unit));
}

/** Millimetres as `38 m`; below a metre with two decimals. */
export function metres(millimetres: number): string {
  return `${Number((millimetres / 1000).toFixed(millimetres < 1000 ? 2 : 1))} m`;
}

/** Millimetres as `450 mm`. */
export function millimetres(amount: number): string {
  return `${Math.round(amount)} mm`;
}

/** Grams as `3.5 kg`. */
export function kilograms(grams: number): string {
  return `${Number((grams / 1000).toFixed(grams < 10_000 ? 2 : 1))} kg`;
}

/**
 * Milliseconds as `40 ms`, `2.5 s`, `1 min 30 s`, `1 h 50 min`, `14 d`: below a minute to a hundredth of a second, below
 * an hour to a second, and to a minute from an hour on.
 */
export function duration(milliseconds: number): string {
  if (milliseconds < SECOND) return `${Math.round(milliseconds)} ms`;
  // What is rounded up may reach the next unit: 59.999 s are a minute.
  const [, step] = STEPS.find(([below, by]) => rounded(milliseconds, by) < below) ?? [Infinity, MINUTE];
  let left = rounded(milliseconds, step);
  if (left < MINUTE) return `${left / SECOND} s`;
  const parts = UNITS.map(([unit, length]) => {
    const whole = Math.floor(left / length);
    left -= whole * length;
    return whole === 0 ? '' : `${whole} ${unit}`;
  });
  return parts.filter((part) => part !== '').join(' ');
}

/** What a duration is rounded to, below which length. */
const STEPS: readonly (readonly [number, number])[] = [
  [MINUTE, 10],
  [HOUR, SECOND],
];

const UNITS: readonly (readonly [string, number])[] = [
  ['d', DAY],
  ['h', HOUR],
  ['min', MINUTE],
  ['s', SECOND],
];

function rounded(value: number, step: number): number {
  return Math.round(value / step) * step;
}

/** Days as `11.3 d`. */
export function days(amount: number): string {
  return `${amount >= 100 ? Math.round(amount) : Number(amount.toFixed(1))} d`;
}

/** A part of a whole as `112 %`; one decimal below 10 %. */
export function percent(part: number, whole: number): string {
  const value = (part / whole) * 100;
  return `${value >= 10 ? Math.round(value) : Number(value.toFixed(1))} %`;
}

/** A part above a bound (in ten-thousandths), with enough decimals to show it: `90.1 %` for at most 90 %. */
export function percentOver(part: number, whole: number, bound: number): string {
  const value = (part / whole) * 100;
  const digits = [0, 1, 2].find((decimals) => Number(value.toFixed(decimals)) > bound / 100) ?? 3;
  return value < 10 && digits === 0 ? percent(part, whole) : `${Number(value.toFixed(digits))} %`;
}

/** Ten-thousandths as `70 %`. */
export function threshold(tenThousandths: number): string {
  return `${tenThousandths / 100} %`;
}

export function frequency(hertz: number): string {
  return scaled(hertz, 1000, ['Hz', 'kHz', 'MHz', 'GHz']);
}

export function packetsPerSecond(rate: number): string {
  return `${rate >= 100 ? Math.round(rate) : Number(rate.toFixed(1))} packets/s`;
}

/** Function words of English, and the kinds of devices: what reads as a word of the sentence and not as a name. */
const WORDS: ReadonlySet<string> = new Set(
  (
    'a an the this that these those it its one two three four five six seven eight nine ten first second third last ' +
    'next other others another both each every all any some none no nothing nobody not only too also as at by for ' +
    'from in into of off on onto out over to under up down with without and or but if so than then there here is are ' +
    'be has have had can may must will do does done i me my we us our you your he she they them his her their who what ' +
    'which when where now never always again same new old left right above below behind before after between nearest ' +
    'switch access-point media-converter server camera display computer tuner patch-panel internet aerial lnb ' +
    'amplifier attenuator filter equaliser splitter tap combiner diplexer multiswitch outlet power-inserter isolator ' +
    'earth-block ups circuit cable port stream volume recording device'
  ).split(' '),
);

/** A name in a sentence: `core`, and `‘one’` where it could be read as a word. */
export function asName(name: string): string {
  return WORDS.has(name.toLowerCase()) ? `‘${name}’` : name;
}

/** `a`, `a and b`, `a, b and c`. */
export function list(names: readonly string[], word = 'and'): string {
  if (names.length < 2) return names.join('');
  return `${names.slice(0, -1).join(', ')} ${word} ${names[names.length - 1] ?? ''}`;
}

/**
 * The first few names and how many others: `paddock-live and 14 others`. Where `names` are only the first `show + 1`,
 * `total` says how many there are.
 */
export function few(names: readonly string[], show = 2, total = names.length): string {
  if (total <= show + 1) return list(names.map(asName));
  const others = total - show;
  return `${names.slice(0, show).map(asName).join(', ')} and ${others} others`;
}

/** `1 file`, `3 files`. */
export function count(number: number, noun: string, plural = `${noun}s`): string {
  return `${number} ${number === 1 ? noun : plural}`;
}
