/**
 * The net rate of a multiplex: what is left for transport-stream packets of 188 bytes.
 *
 * Sources: the formulas of `system.ts`'s standards by secondary transcriptions; the sizes of blocks as GNU Radio has
 * them; checked against published tables, see the tests.
 */

import { BITS_PER_SYMBOL, type Modulation, type T2Frame, type Transmission, samplePeriod } from './system.ts';

export interface NetRate {
  /** Bits per second. */
  readonly rate: number;
  /** With the figures that went into it. */
  readonly formula: string;
}

/** `undefined` if a value that the rate depends on is undeclared, or not in the standard. */
export function netRate(transmission: Transmission): NetRate | undefined {
  const { system, modulation } = transmission;
  const bits = BITS_PER_SYMBOL[modulation];
  switch (system) {
    case 'dvb-t':
      return terrestrial(transmission, bits);
    case 'dvb-t2':
      return secondTerrestrial(transmission, bits);
    case 'dvb-c':
      return cable(transmission, bits);
    case 'j83b':
      return americanCable(modulation);
    case 'dvb-s':
      return satellite(transmission);
    case 'dvb-s2':
      return secondSatellite(transmission, bits);
    case 'atsc':
      return { rate: Math.round(ATSC), formula: '10.762238 MBd · 312/313 · 188 · 8/832' };
    case 'isdb-t':
      return segmented(transmission, bits);
  }
}

/** Reed–Solomon (204, 188). */
const REED_SOLOMON = 188 / 204;

function rateOf(rate: number, formula: string): NetRate {
  return { rate: Math.round(rate), formula };
}

function terrestrial({ bandwidth, codeRate, guardInterval }: Transmission, bits: number): NetRate | undefined {
  if (bandwidth === undefined || codeRate === undefined || guardInterval === undefined) return undefined;
  const rate = ((423 / 544) * bandwidth * bits * fraction(codeRate)) / (1 + fraction(guardInterval));
  return rateOf(rate, `423/544 · ${bandwidth / 1e6} MHz · ${bits} bit · ${codeRate} / (1 + ${guardInterval})`);
}

/** Kbch of BCH codes for frames of 64 800 bits by code rate, EN 302 307-1 table 5a and EN 302 755 table 6a. */
const BCH_BITS: Readonly<Record<string, number>> = {
  '1/4': 16_008,
  '1/3': 21_408,
  '2/5': 25_728,
  '1/2': 32_208,
  '3/5': 38_688,
  '2/3': 43_040,
  '3/4': 48_408,
  '4/5': 51_648,
  '5/6': 53_840,
  '8/9': 57_472,
  '9/10': 58_192,
};
/** Bits of a baseband frame that its header takes. */
const HEADER_BITS = 80;
const FRAME_BITS = 64_800;

/** Samples of the symbol P1. */
const P1 = 2048;

function secondTerrestrial(
  { bandwidth, codeRate, guardInterval, frame }: Transmission,
  bits: number,
): NetRate | undefined {
  if (bandwidth === undefined || codeRate === undefined || guardInterval === undefined || frame === undefined)
    return undefined;
  const bch = BCH_BITS[codeRate];
  if (bch === undefined || bits === 0) return undefined;
  const seconds = t2FrameLength(frame, fraction(guardInterval), bandwidth);
  // Packets are sent without their sync byte (high-efficiency mode).
  const rate = ((frame.blocks * (bch - HEADER_BITS)) / seconds) * (188 / 187);
  return rateOf(
    rate,
    `${frame.blocks} blocks · (${bch} − ${HEADER_BITS}) bit / ${(seconds * 1000).toFixed(3)} ms · 188/187`,
  );
}

/** Seconds. */
function t2FrameLength({ size, symbols }: T2Frame, guard: number, bandwidth: number): number {
  return (P1 + symbols * size * 1024 * (1 + guard)) * samplePeriod(bandwidth);
}

function cable({ symbolRate }: Transmission, bits: number): NetRate | undefined {
  if (symbolRate === undefined) return undefined;
  return rateOf(symbolRate * bits * REED_SOLOMON, `${symbolRate / 1e6} MBd · ${bits} bit · 188/204`);
}

/** Symbols per second, bits of a symbol after trellis coding, and the frame of the outer code with its sync bits. */
const ANNEX_B: Partial<
  Readonly<Record<Modulation, readonly [symbols: number, bits: number, frame: number, words: string]>>
> = {
  '64qam': [5.056941e6, 6 * (14 / 15), 53_760 / 53_802, '5.056941 MBd · 6 · 14/15 · 122/128 · 53760/53802'],
  '256qam': [5.360537e6, 8 * (19 / 20), 78_848 / 78_888, '5.360537 MBd · 8 · 19/20 · 122/128 · 78848/78888'],
};

function americanCable(modulation: Modulation): NetRate | undefined {
  const found = ANNEX_B[modulation];
  if (found === undefined) return undefined;
  const [symbols, bits, frame, words] = found;
  return rateOf(symbols * bits * (122 / 128) * frame, words);
}

function satellite({ symbolRate, codeRate }: Transmission): NetRate | undefined {
  if (symbolRate === undefined || codeRate === undefined) return undefined;
  return rateOf(
    symbolRate * 2 * fraction(codeRate) * REED_SOLOMON,
    `${symbolRate / 1e6} MBd · 2 bit · ${codeRate} · 188/204`,
  );
}

/** Symbols of a slot, and between two blocks of pilots 16 slots; of a block of pilots. */
const SLOT = 90;
const SLOTS_BETWEEN_PILOTS = 16;
const PILOT_BLOCK = 36;

function secondSatellite({ symbolRate, codeRate, pilots = false }: Transmission, bits: number): NetRate | undefined {
  const bch = codeRate === undefined ? undefined : BCH_BITS[codeRate];
  if (symbolRate === undefined || bch === undefined) return undefined;
  const slots = FRAME_BITS / bits / SLOT;
  const blocks = pilots ? Math.floor((slots - 1) / SLOTS_BETWEEN_PILOTS) : 0;
  const symbols = SLOT * (slots + 1) + PILOT_BLOCK * blocks;
  return rateOf(
    (symbolRate * (bch - HEADER_BITS)) / symbols,
    `${symbolRate / 1e6} MBd · (${bch} − ${HEADER_BITS}) bit / ${symbols} symbols`,
  );
}

/** 832 symbols carry a packet of 188 bytes, and one of 313 such segments is for synchronisation. */
const ATSC = (((4.5e6 / 286) * 684) / 832) * (312 / 313) * 188 * 8;

/** Carriers of a segment that carry data over the useful part of a symbol in mode 3, in a channel of 6 MHz. */
const SEGMENT_CARRIERS = 384;
const SEGMENT_SYMBOL = 1.008e-3;

function segmented(
  { bandwidth = 6e6, codeRate, guardInterval, segments = 12 }: Transmission,
  bits: number,
): NetRate | undefined {
  if (codeRate === undefined || guardInterval === undefined) return undefined;
  const symbol = SEGMENT_SYMBOL * (6e6 / bandwidth) * (1 + fraction(guardInterval));
  return rateOf(
    (SEGMENT_CARRIERS * segments * bits * fraction(codeRate) * REED_SOLOMON) / symbol,
    `${SEGMENT_CARRIERS} · ${segments} segments · ${bits} bit · ${codeRate} · 188/204 / ${(symbol * 1000).toFixed(3)} ms`,
  );
}

/** The value of a text such as `2/3`. */
export function fraction(text: string): number {
  const [over = 1, under = 1] = text.split('/').map(Number);
  return over / under;
}

/**
 * Bits per second of PAT and PMT, each a packet of 188 bytes every 100 ms (ETSI TR 101 290 asks for 500 ms at most).
 */
export const TABLES_OF_SERVICE = 2 * 10 * 188 * 8;
