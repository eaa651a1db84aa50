/**
 * What a receiver needs: the ratio of carrier to noise, and the levels at an outlet.
 *
 * Sources: DVB-T the limits of NorDig 2.2 as the Linux driver drxk has them; DVB-T2 Rec. ITU-R BT.2033-2 table 2,
 * Rice channel, by a transcription; DVB-S2 Es/N0 of EN 302 307-1 table 13 with 1 dB for the receiver; DVB-S Eb/N0 of
 * EN 300 421 from memory; DVB-C as the Japanese ordinance on cable television has it; J.83 B, ATSC and ISDB-T from
 * memory. Outlets: EN 60728-1 by a handbook, DVB-T2 by a service specification for cable; ATSC and ISDB-T from memory.
 */

import { decibels } from './level.ts';
import { fraction } from './net-rate.ts';
import { type Modulation, type System, type Transmission, isSatellite } from './system.ts';

/** By the system's code rates, in their order. */
type ByRate = Partial<Readonly<Record<Modulation, Readonly<Record<string, number>>>>>;

function byRate(rates: readonly string[], values: readonly number[]): Readonly<Record<string, number>> {
  return Object.fromEntries(rates.map((rate, index) => [rate, values[index] ?? NaN]));
}

const CONVOLUTIONAL = ['1/2', '2/3', '3/4', '5/6', '7/8'];
const T2 = ['1/2', '3/5', '2/3', '3/4', '4/5', '5/6'];

const DVB_T: ByRate = {
  'qpsk': byRate(CONVOLUTIONAL, [5.1, 6.9, 7.9, 8.9, 9.7]),
  '16qam': byRate(CONVOLUTIONAL, [10.8, 13.1, 14.6, 15.6, 16.0]),
  '64qam': byRate(CONVOLUTIONAL, [16.5, 18.7, 20.2, 21.6, 22.5]),
};

const DVB_T2: ByRate = {
  'qpsk': byRate(T2, [2.6, 3.8, 4.8, 5.8, 6.5, 7.0]),
  '16qam': byRate(T2, [7.8, 9.2, 10.5, 11.8, 12.6, 13.1]),
  '64qam': byRate(T2, [12.2, 14.1, 15.4, 16.9, 18.1, 18.7]),
  '256qam': byRate(T2, [16.3, 18.4, 20.0, 22.0, 23.6, 24.4]),
};

/** Es/N0 of an ideal receiver. */
const DVB_S2: ByRate = {
  'qpsk': byRate(
    ['1/4', '1/3', '2/5', '1/2', '3/5', '2/3', '3/4', '4/5', '5/6', '8/9', '9/10'],
    [-2.35, -1.24, -0.3, 1.0, 2.23, 3.1, 4.03, 4.68, 5.18, 6.2, 6.42],
  ),
  '8psk': byRate(['3/5', '2/3', '3/4', '5/6', '8/9', '9/10'], [5.5, 6.62, 7.91, 9.35, 10.69, 10.98]),
  '16apsk': byRate(['2/3', '3/4', '4/5', '5/6', '8/9', '9/10'], [8.97, 10.21, 11.03, 11.61, 12.89, 13.13]),
  '32apsk': byRate(['3/4', '4/5', '5/6', '8/9', '9/10'], [12.73, 13.64, 14.28, 15.69, 16.05]),
};
/** What a receiver loses against an ideal one, dB. */
const RECEIVER_LOSS = 1;

const ISDB_T: ByRate = {
  'qpsk': byRate(CONVOLUTIONAL, [4.9, 6.6, 7.5, 8.5, 9.1]),
  'dqpsk': byRate(CONVOLUTIONAL, [6.2, 7.7, 8.7, 9.6, 10.4]),
  '16qam': byRate(CONVOLUTIONAL, [11.5, 13.5, 14.6, 15.6, 16.2]),
  '64qam': byRate(CONVOLUTIONAL, [16.5, 18.7, 20.1, 21.3, 22.0]),
};

/** Eb/N0 of DVB-S. */
const DVB_S = byRate(CONVOLUTIONAL, [4.5, 5.0, 5.5, 6.0, 6.4]);

const CABLE: Partial<Readonly<Record<Modulation, number>>> = {
  '16qam': 20,
  '32qam': 23,
  '64qam': 26,
  '128qam': 29,
  '256qam': 32,
};
const ANNEX_B: Partial<Readonly<Record<Modulation, number>>> = { '64qam': 22, '256qam': 28.5 };

/** Carrier to noise that a receiver needs, dB; `undefined` if the standard has no such transmission. */
export function neededRatio({ system, modulation, codeRate = '' }: Transmission): number | undefined {
  switch (system) {
    case 'dvb-t':
      return DVB_T[modulation]?.[codeRate];
    case 'dvb-t2':
      return DVB_T2[modulation]?.[codeRate];
    case 'dvb-c':
      return CABLE[modulation];
    case 'j83b':
      return ANNEX_B[modulation];
    case 'dvb-s': {
      const ratio = DVB_S[codeRate];
      // Eb/N0 counts bits behind both codes.
      return ratio === undefined ? undefined : ratio + decibels(2 * fraction(codeRate) * (188 / 204));
    }
    case 'dvb-s2': {
      const ratio = DVB_S2[modulation]?.[codeRate];
      return ratio === undefined ? undefined : ratio + RECEIVER_LOSS;
    }
    case 'atsc':
      return 15.2;
    case 'isdb-t':
      return ISDB_T[modulation]?.[codeRate];
  }
}

/** Levels at an outlet, dBµV. */
export interface Window {
  readonly min: number;
  readonly max: number;
}

const T2_MINIMUM: ByRate = {
  'qpsk': byRate(T2, [26, 27, 28, 30, 31, 32]),
  '16qam': byRate(T2, [31, 33, 35, 36, 37, 38]),
  '64qam': byRate(T2, [36, 38, 39, 41, 43, 44]),
  '256qam': byRate(T2, [39, 42, 44, 46, 48, 49]),
};

/**
 * The least level for 64QAM 2/3, which has a figure, as 16QAM 2/3 has; those of the other code rates follow from the
 * ratio that they need.
 */
const T_MINIMUM = 45;

const CABLE_WINDOW: Partial<Readonly<Record<Modulation, Window>>> = {
  '16qam': { min: 41, max: 61 },
  '32qam': { min: 44, max: 64 },
  '64qam': { min: 47, max: 67 },
  '128qam': { min: 51, max: 71 },
  '256qam': { min: 54, max: 74 },
};

/** `undefined` if the standard has no such transmission. */
export function outletWindow(transmission: Transmission): Window | undefined {
  const { system, modulation, codeRate = '' } = transmission;
  if (isSatellite(system)) return { min: 47, max: 77 };
  switch (system) {
    case 'dvb-t': {
      if (modulation === '16qam' && codeRate === '2/3') return { min: 36, max: 74 };
      const [needed, reference] = [neededRatio(transmission), DVB_T['64qam']?.['2/3']];
      if (needed === undefined || reference === undefined) return undefined;
      return { min: T_MINIMUM + Math.round(needed - reference), max: 74 };
    }
    case 'dvb-t2': {
      const min = T2_MINIMUM[modulation]?.[codeRate];
      return min === undefined ? undefined : { min, max: 74 };
    }
    case 'dvb-c':
    case 'j83b':
      return CABLE_WINDOW[modulation];
    case 'atsc':
      return { min: 45, max: 70 };
    case 'isdb-t':
      return { min: 47, max: 81 };
    default:
      return undefined;
  }
}

/** The noise figure of a tuner where undeclared, dB: planning (Rec. ITU-R BT.2036), else from memory. */
export function tunerNoiseFigure(system: System): number {
  switch (system) {
    case 'dvb-t':
    case 'dvb-t2':
    case 'isdb-t':
      return 6;
    case 'atsc':
      return 7;
    case 'dvb-c':
    case 'j83b':
      return 8;
    case 'dvb-s':
    case 'dvb-s2':
      return 10;
  }
}

/**
 * The power of all signals together that a tuner takes, where undeclared, dBµV: common practice for one without a
 * filter.
 */
export const TUNER_MAXIMUM = 80;
