/**
 * The systems of digital television: what each allows, how wide its signal is.
 *
 * Sources: EN 300 744 (DVB-T), EN 302 755 (DVB-T2), EN 300 429 (DVB-C), EN 300 421 (DVB-S), EN 302 307-1 (DVB-S2),
 * ATSC A/53, ITU-T J.83 annex B, ABNT NBR 15601 (ISDB-T), all by secondary transcriptions and open-source receivers.
 */

export type System = 'dvb-t' | 'dvb-t2' | 'dvb-c' | 'j83b' | 'dvb-s' | 'dvb-s2' | 'atsc' | 'isdb-t';

export type Modulation =
  'qpsk' | 'dqpsk' | '8psk' | '16qam' | '16apsk' | '32qam' | '32apsk' | '64qam' | '128qam' | '256qam' | '8vsb';

export const BITS_PER_SYMBOL: Readonly<Record<Modulation, number>> = {
  'qpsk': 2,
  'dqpsk': 2,
  '8psk': 3,
  '16qam': 4,
  '16apsk': 4,
  '32qam': 5,
  '32apsk': 5,
  '64qam': 6,
  '128qam': 7,
  '256qam': 8,
  '8vsb': 2,
};

/** A transmission on one frequency, as a receiver is tuned to it. Values that a system does not have are absent. */
export interface Transmission {
  readonly system: System;
  readonly modulation: Modulation;
  /** Width of the channel, Hz: terrestrial systems. */
  readonly bandwidth?: number | undefined;
  /** Symbols per second: by satellite and cable. */
  readonly symbolRate?: number | undefined;
  /** Such as `2/3`. */
  readonly codeRate?: string | undefined;
  /** Such as `1/32`: OFDM. */
  readonly guardInterval?: string | undefined;
  /** DVB-S2. */
  readonly pilots?: boolean | undefined;
  /** ISDB-T: the segments of this modulation, out of 13; 12 where undeclared, as one is for telephones. */
  readonly segments?: number | undefined;
  /** DVB-T2: the parts of the frame that decide the rate. */
  readonly frame?: T2Frame | undefined;
  /** DVB-T2: more carriers in the same channel. */
  readonly extended?: boolean | undefined;
}

export interface T2Frame {
  /** Carriers, in thousands, as the modes are named: 1, 2, 4, 8, 16, 32. */
  readonly size: number;
  /** Symbols of a frame, those of P2 among them, P1 not. */
  readonly symbols: number;
  /** FEC blocks in a frame. */
  readonly blocks: number;
}

const CONVOLUTIONAL = ['1/2', '2/3', '3/4', '5/6', '7/8'];

interface Allowed {
  readonly modulations: readonly Modulation[];
  /** `[]` where the system has one code. */
  readonly codeRates: readonly string[];
  readonly guardIntervals: readonly string[];
  /** Hz; `[]` where the symbol rate decides. */
  readonly bandwidths: readonly number[];
}

const MHZ = 1e6;

const ALLOWED: Readonly<Record<System, Allowed>> = {
  'dvb-t': {
    modulations: ['qpsk', '16qam', '64qam'],
    codeRates: CONVOLUTIONAL,
    guardIntervals: ['1/4', '1/8', '1/16', '1/32'],
    bandwidths: [5 * MHZ, 6 * MHZ, 7 * MHZ, 8 * MHZ],
  },
  'dvb-t2': {
    modulations: ['qpsk', '16qam', '64qam', '256qam'],
    codeRates: ['1/2', '3/5', '2/3', '3/4', '4/5', '5/6'],
    guardIntervals: ['1/4', '19/128', '1/8', '19/256', '1/16', '1/32', '1/128'],
    bandwidths: [1.7 * MHZ, 5 * MHZ, 6 * MHZ, 7 * MHZ, 8 * MHZ, 10 * MHZ],
  },
  'dvb-c': {
    modulations: ['16qam', '32qam', '64qam', '128qam', '256qam'],
    codeRates: [],
    guardIntervals: [],
    bandwidths: [],
  },
  'j83b': { modulations: ['64qam', '256qam'], codeRates: [], guardIntervals: [], bandwidths: [6 * MHZ] },
  'dvb-s': { modulations: ['qpsk'], codeRates: CONVOLUTIONAL, guardIntervals: [], bandwidths: [] },
  'dvb-s2': {
    modulations: ['qpsk', '8psk', '16apsk', '32apsk'],
    codeRates: ['1/4', '1/3', '2/5', '1/2', '3/5', '2/3', '3/4', '4/5', '5/6', '8/9', '9/10'],
    guardIntervals: [],
    bandwidths: [],
  },
  'atsc': { modulations: ['8vsb'], codeRates: [], guardIntervals: [], bandwidths: [6 * MHZ] },
  'isdb-t': {
    modulations: ['dqpsk', 'qpsk', '16qam', '64qam'],
    codeRates: CONVOLUTIONAL,
    guardIntervals: ['1/4', '1/8', '1/16', '1/32'],
    bandwidths: [6 * MHZ, 7 * MHZ, 8 * MHZ],
  },
};

/** Code rates of DVB-S2 by modulation, of normal frames (EN 302 307-1, table 13). */
const S2_RATES: Partial<Readonly<Record<Modulation, readonly string[]>>> = {
  '8psk': ['3/5', '2/3', '3/4', '5/6', '8/9', '9/10'],
  '16apsk': ['2/3', '3/4', '4/5', '5/6', '8/9', '9/10'],
  '32apsk': ['3/4', '4/5', '5/6', '8/9', '9/10'],
};

export function isSystem(word: unknown): word is System {
  return typeof word === 'string' && Object.hasOwn(ALLOWED, word);
}

export function isModulation(word: unknown): word is Modulation {
  return typeof word === 'string' && Object.hasOwn(BITS_PER_SYMBOL, word);
}

export function modulationsOf(system: System): readonly Modulation[] {
  return ALLOWED[system].modulations;
}

/** `[]` if the system has one code and names none. */
export function codeRatesOf(system: System, modulation: Modulation): readonly string[] {
  return (system === 'dvb-s2' ? S2_RATES[modulation] : undefined) ?? ALLOWED[system].codeRates;
}

/** `[]` if the system has none. */
export function guardIntervalsOf(system: System): readonly string[] {
  return ALLOWED[system].guardIntervals;
}

/** Hz; `[]` if the symbol rate decides how wide the signal is. */
export function bandwidthsOf(system: System): readonly number[] {
  return ALLOWED[system].bandwidths;
}

export function isSatellite(system: System): boolean {
  return system === 'dvb-s' || system === 'dvb-s2';
}

/** Carriers of DVB-T's 8K mode, and those of DVB-T2's 32K mode with more carriers; every mode is about as wide. */
const T_CARRIERS = 6817;
const T2_EXTENDED_CARRIERS = 27_841;

/** The bandwidth that noise counts in, Hz. */
export function noiseBandwidth(transmission: Transmission): number {
  const { system, symbolRate = 0, bandwidth = 8 * MHZ, extended = false } = transmission;
  switch (system) {
    case 'dvb-t':
      return T_CARRIERS / usefulSymbol(8, bandwidth);
    case 'dvb-t2':
      return extended ? T2_EXTENDED_CARRIERS / usefulSymbol(32, bandwidth) : T_CARRIERS / usefulSymbol(8, bandwidth);
    case 'atsc':
    case 'j83b':
      return 6 * MHZ;
    case 'isdb-t':
      return (5.575 * MHZ * bandwidth) / (6 * MHZ);
    default:
      return symbolRate;
  }
}

/** The useful part of an OFDM symbol of so many thousand carriers, seconds: 1024 samples a thousand. */
function usefulSymbol(size: number, bandwidth: number): number {
  return size * 1024 * samplePeriod(bandwidth);
}

/** The elementary period of DVB-T and T2, seconds: 7/64 µs in a channel of 8 MHz. */
export function samplePeriod(bandwidth: number): number {
  return bandwidth === 1.7 * MHZ ? 71e-6 / 131 : (7 / 8) * (1 / bandwidth);
}

/** How much of the spectrum the signal takes, Hz: the channel, or the symbol rate with its roll-off. */
export function occupiedBandwidth({ system, symbolRate = 0, bandwidth = 8 * MHZ }: Transmission): number {
  if (system === 'dvb-c') return symbolRate * 1.15;
  return isSatellite(system) ? symbolRate * 1.35 : bandwidth;
}
