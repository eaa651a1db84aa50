/** Figures with their units: exact for checking a sum, short for a glance. */

import { bitRate, byteRate, bytes, days } from '../../text/words.ts';

export type FigureUnit = 'b/s' | 'B' | 'B/s' | 'packets/s' | 'd' | 'W' | '%' | 'files/d' | 'addresses';

export interface Figure {
  readonly value: number;
  readonly unit: FigureUnit;
}

/** The most decimals of an exact figure. */
const DECIMALS: Readonly<Record<FigureUnit, number>> = {
  'b/s': 1,
  'B': 1,
  'B/s': 1,
  'packets/s': 3,
  'd': 2,
  'W': 2,
  '%': 2,
  'files/d': 1,
  'addresses': 0,
};

/** `6,412,345 b/s` */
export function exact({ value, unit }: Figure): string {
  return `${digitsGrouped(value, DECIMALS[unit])} ${unit}`;
}

/** `6.41 Mb/s` */
export function short(figure: Figure): string {
  switch (figure.unit) {
    case 'b/s':
      return bitRate(figure.value);
    case 'B':
      // The bytes of a packet are exact.
      return Math.abs(figure.value) < 10_000 ? exact(figure) : bytes(figure.value);
    case 'B/s':
      return byteRate(figure.value);
    case 'd':
      return days(figure.value);
    default:
      return exact(figure);
  }
}

/** `1,234.5`: thousands separated, at most so many decimals. */
export function digitsGrouped(value: number, decimals = 0): string {
  const [whole = '', fraction = ''] = Math.abs(value).toFixed(decimals).split('.');
  const digits = fraction.replace(/0+$/, '');
  const sign = value < 0 ? '-' : '';
  return `${sign}${whole.replace(/\B(?=(\d{3})+$)/g, ',')}${digits === '' ? '' : `.${digits}`}`;
}

/** Both columns of a rate. */
export function rates(
  { nominal, peak }: { readonly nominal: number; readonly peak: number },
  unit: FigureUnit = 'b/s',
): Figure[] {
  return [
    { value: nominal, unit },
    { value: peak, unit },
  ];
}
