/** A quantity in its other units. */

import { LEVEL_OF_MILLIVOLT, LEVEL_OF_MILLIWATT } from '../../standards/television/level.ts';
import { type Quantity, levelOf } from '../../text/quantity.ts';
import { binaryBytes, bitRate, byteRate, bytes, duration } from '../../text/words.ts';
import { answer } from '../answer/words.ts';
import type { Explanation, ExplanationLine } from './explanation.ts';
import { digitsGrouped } from './figure.ts';
import { DAY, HOUR, MINUTE, SECOND } from '../../standards/time-units.ts';

/** `text` is the quantity as in the site. */
export function quantityExplained(text: string, quantity: Quantity): Explanation {
  return {
    answer: answerOf(quantity, text),
    title: text,
    columns: [],
    lines: linesOf(quantity).filter(({ cells }) => cells[0] !== text),
  };
}

/** The quantity in other usual units; empty where there are none. */
function answerOf({ kind, value }: Quantity, text: string): string {
  const others = (...words: readonly string[]): string => answer(...words.filter((one) => one !== text));
  switch (kind) {
    case 'bit-rate':
      return others(byteRate(value / 8), `${bytes((value / 8) * (DAY / SECOND))} a day`);
    case 'byte-rate':
      return others(bitRate(value * 8), `${bytes(value * (DAY / SECOND))} a day`);
    case 'size':
      return others(bytes(value), binaryBytes(value));
    case 'duration':
      return value >= DAY
        ? others(duration(value), `${digitsGrouped(value / HOUR, 2)} h`)
        : value >= HOUR
          ? others(duration(value), `${digitsGrouped(value / MINUTE, 2)} min`)
          : others(...(value >= MINUTE ? [duration(value)] : []), `${digitsGrouped(value / SECOND, 3)} s`);
    case 'length':
      return others(`${digitsGrouped(value / 304.8, 1)} ft`);
    case 'power':
      return others(`${digitsGrouped((value * 8766) / 1e6)} kWh a year at full draw`);
    default:
      return '';
  }
}

function linesOf({ kind, value, unit }: Quantity): ExplanationLine[] {
  const line = (label: string, cell: string, formula = '', source?: string): ExplanationLine => ({
    label,
    cells: [cell],
    formula,
    ...(source !== undefined && { source }),
  });
  switch (kind) {
    case 'bit-rate':
      return [
        line('bits', `${digitsGrouped(value)} b/s`),
        line('bytes', byteRate(value / 8), '÷ 8'),
        line('an hour', bytes((value / 8) * 3600), '× 3,600 s ÷ 8'),
        line('a day', bytes((value / 8) * (DAY / SECOND)), '× 86,400 s ÷ 8'),
      ];
    case 'byte-rate':
      return [
        line('bytes', `${digitsGrouped(value)} B/s`),
        line('powers of 1024', `${binaryBytes(value)}/s`, '', 'IEC 80000-13'),
        line('bits', bitRate(value * 8), '× 8'),
        line('a day', bytes(value * (DAY / SECOND)), '× 86,400 s'),
      ];
    case 'size':
      return [
        line('bytes', `${digitsGrouped(value)} B`),
        line('powers of 1000', bytes(value), '', 'IEC 80000-13'),
        line('powers of 1024', binaryBytes(value), '', 'IEC 80000-13'),
      ];
    case 'duration':
      return [
        line('seconds', `${digitsGrouped(value / SECOND, 3)} s`),
        ...(value < MINUTE ? [] : [line('minutes', `${digitsGrouped(value / MINUTE, 2)} min`)]),
        ...(value < HOUR ? [] : [line('hours', `${digitsGrouped(value / HOUR, 2)} h`)]),
        ...(value < DAY ? [] : [line('days', `${digitsGrouped(value / DAY, 2)} d`)]),
      ];
    case 'length':
      return [
        line('millimetres', `${digitsGrouped(value)} mm`),
        line('feet', `${digitsGrouped(value / 304.8, 1)} ft`, '÷ 0.3048 m'),
      ];
    case 'power':
      return [
        line('milliwatts', `${digitsGrouped(value)} mW`),
        line('a day', `${digitsGrouped((value * 24) / 1e6, 2)} kWh`, '× 24 h'),
        line('a year', `${digitsGrouped((value * 8766) / 1e6)} kWh`, '× 8,766 h'),
      ];
    case 'mass':
      return [
        line('grams', `${digitsGrouped(value)} g`),
        line('pounds', `${digitsGrouped(value / 453.592_37, 1)} lb`, '÷ 0.45359237 kg'),
      ];
    case 'apparent-power':
      return [line('milli-volt-amperes', `${digitsGrouped(value)} mVA`)];
    case 'energy':
      return [
        line('joules', `${digitsGrouped(value * 3.6)} J`, '× 3,600 s'),
        line('in a 12 V battery', `${digitsGrouped(value / 12_000, 2)} Ah`, '÷ 12 V'),
      ];
    case 'percentage':
      return [line('of one', digitsGrouped(value / 10_000, 4))];
    case 'frequency':
      return [line('hertz', `${digitsGrouped(value)} Hz`), line('period', periodWords(value), '1 ÷ frequency')];
    case 'ratio':
      // In thousandths of a decibel: 10 dB are a factor of 10 in power, 20 dB in voltage.
      return [line('ratio of powers', digitsGrouped(10 ** (value / 10_000), 3), '10^(level ÷ 10)')];
    case 'level':
      return levelLines(value / 1000, unit).map(([label, cell, formula]) => line(label, cell, formula));
    case 'voltage':
      return [line('millivolts', `${digitsGrouped(value)} mV`)];
    case 'current':
      return [line('milliamperes', `${digitsGrouped(value)} mA`)];
    case 'symbol-rate':
      return [line('symbols', `${digitsGrouped(value)} Bd`)];
    case 'area':
      return [
        line(
          'diameter of a round conductor',
          `${digitsGrouped(2 * Math.sqrt(value / 100 / Math.PI), 2)} mm`,
          '2 · √(A ÷ π)',
        ),
      ];
  }
}

/** A level in the other units, at 75 Ω. */
function levelLines(level: number, unit: string): (readonly [string, string, string])[] {
  const microvolts = levelOf(`${level} ${unit}`) ?? NaN;
  return [
    ['over a microvolt', `${digitsGrouped(microvolts, 2)} dBµV`, 'at 75 Ω'],
    ['over a millivolt', `${digitsGrouped(microvolts - LEVEL_OF_MILLIVOLT, 2)} dBmV`, '− 60'],
    ['over a milliwatt', `${digitsGrouped(microvolts - LEVEL_OF_MILLIWATT, 2)} dBm`, '− 108.75'],
    ['voltage', `${digitsGrouped(10 ** (microvolts / 20), 1)} µV`, '1 µV × 10^(level ÷ 20)'],
  ];
}

function periodWords(hertz: number): string {
  if (hertz === 0) return 'none';
  const nanoseconds = 1e9 / hertz;
  const [unit, factor] =
    nanoseconds >= 1e6 ? (['ms', 1e6] as const) : nanoseconds >= 1e3 ? (['µs', 1e3] as const) : (['ns', 1] as const);
  return `${digitsGrouped(nanoseconds / factor, 2)} ${unit}`;
}
