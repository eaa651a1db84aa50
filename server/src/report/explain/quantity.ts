/** A quantity in its other units. */

import { LEVEL_OF_MILLIVOLT, LEVEL_OF_MILLIWATT } from '../../standards/television/level.ts';
import { type Quantity, levelOf } from '../../text/quantity.ts';
import { binaryBytes, bitRate, byteRate, bytes, duration } from '../../text/words.ts';
import { answer } from '../answer/words.ts';
import type { Explanation, ExplanationLine } from './explanation.ts';
import { grouped } from './figure.ts';
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
        ? others(duration(value), `${grouped(value / HOUR, 2)} h`)
        : value >= HOUR
          ? others(duration(value), `${grouped(value / MINUTE, 2)} min`)
          : others(...(value >= MINUTE ? [duration(value)] : []), `${grouped(value / SECOND, 3)} s`);
    case 'length':
      return others(`${grouped(value / 304.8, 1)} ft`);
    case 'power':
      return others(`${grouped((value * 8766) / 1e6)} kWh a year at full draw`);
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
        line('bits', `${grouped(value)} b/s`),
        line('bytes', byteRate(value / 8), '÷ 8'),
        line('an hour', bytes((value / 8) * 3600), '× 3,600 s ÷ 8'),
        line('a day', bytes((value / 8) * (DAY / SECOND)), '× 86,400 s ÷ 8'),
      ];
    case 'byte-rate':
      return [
        line('bytes', `${grouped(value)} B/s`),
        line('powers of 1024', `${binaryBytes(value)}/s`, '', 'IEC 80000-13'),
        line('bits', bitRate(value * 8), '× 8'),
        line('a day', bytes(value * (DAY / SECOND)), '× 86,400 s'),
      ];
    case 'size':
      return [
        line('bytes', `${grouped(value)} B`),
        line('powers of 1000', bytes(value), '', 'IEC 80000-13'),
        line('powers of 1024', binaryBytes(value), '', 'IEC 80000-13'),
      ];
    case 'duration':
      return [
        line('seconds', `${grouped(value / SECOND, 3)} s`),
        ...(value < MINUTE ? [] : [line('minutes', `${grouped(value / MINUTE, 2)} min`)]),
        ...(value < HOUR ? [] : [line('hours', `${grouped(value / HOUR, 2)} h`)]),
        ...(value < DAY ? [] : [line('days', `${grouped(value / DAY, 2)} d`)]),
      ];
    case 'length':
      return [
        line('millimetres', `${grouped(value)} mm`),
        line('feet', `${grouped(value / 304.8, 1)} ft`, '÷ 0.3048 m'),
      ];
    case 'power':
      return [
        line('milliwatts', `${grouped(value)} mW`),
        line('a day', `${grouped((value * 24) / 1e6, 2)} kWh`, '× 24 h'),
        line('a year', `${grouped((value * 8766) / 1e6)} kWh`, '× 8,766 h'),
      ];
    case 'mass':
      return [
        line('grams', `${grouped(value)} g`),
        line('pounds', `${grouped(value / 453.592_37, 1)} lb`, '÷ 0.45359237 kg'),
      ];
    case 'apparent-power':
      return [line('milli-volt-amperes', `${grouped(value)} mVA`)];
    case 'energy':
      return [
        line('joules', `${grouped(value * 3.6)} J`, '× 3,600 s'),
        line('in a 12 V battery', `${grouped(value / 12_000, 2)} Ah`, '÷ 12 V'),
      ];
    case 'percentage':
      return [line('of one', grouped(value / 10_000, 4))];
    case 'frequency':
      return [line('hertz', `${grouped(value)} Hz`), line('period', periodWords(value), '1 ÷ frequency')];
    case 'ratio':
      // In thousandths of a decibel: 10 dB are a factor of 10 in power, 20 dB in voltage.
      return [line('ratio of powers', grouped(10 ** (value / 10_000), 3), '10^(level ÷ 10)')];
    case 'level':
      return levelLines(value / 1000, unit).map(([label, cell, formula]) => line(label, cell, formula));
    case 'voltage':
      return [line('millivolts', `${grouped(value)} mV`)];
    case 'current':
      return [line('milliamperes', `${grouped(value)} mA`)];
    case 'symbol-rate':
      return [line('symbols', `${grouped(value)} Bd`)];
    case 'area':
      return [
        line('diameter of a round conductor', `${grouped(2 * Math.sqrt(value / 100 / Math.PI), 2)} mm`, '2 · √(A ÷ π)'),
      ];
  }
}

/** A level in the other units, at 75 Ω. */
function levelLines(level: number, unit: string): (readonly [string, string, string])[] {
  const microvolts = levelOf(`${level} ${unit}`) ?? NaN;
  return [
    ['over a microvolt', `${grouped(microvolts, 2)} dBµV`, 'at 75 Ω'],
    ['over a millivolt', `${grouped(microvolts - LEVEL_OF_MILLIVOLT, 2)} dBmV`, '− 60'],
    ['over a milliwatt', `${grouped(microvolts - LEVEL_OF_MILLIWATT, 2)} dBm`, '− 108.75'],
    ['voltage', `${grouped(10 ** (microvolts / 20), 1)} µV`, '1 µV × 10^(level ÷ 20)'],
  ];
}

function periodWords(hertz: number): string {
  if (hertz === 0) return 'none';
  const nanoseconds = 1e9 / hertz;
  const [unit, factor] =
    nanoseconds >= 1e6 ? (['ms', 1e6] as const) : nanoseconds >= 1e3 ? (['µs', 1e3] as const) : (['ns', 1] as const);
  return `${grouped(nanoseconds / factor, 2)} ${unit}`;
}
