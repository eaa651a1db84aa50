/** What a site declares of television: parts of the aerial system, what is on air, what is wanted at once. */

import type { Item } from '../item.ts';
import type { CoaxCore } from '../../standards/television/coax.ts';
import type { Polarisation } from '../../standards/television/satellite.ts';
import type { Modulation, System, T2Frame } from '../../standards/television/system.ts';
import type { Bus as BusKind } from '../../standards/television/usb.ts';
import type { FrequencyRange } from '../../text/quantity.ts';
import type { KeyPath } from '../../text/syntax.ts';

/** Kinds of device that pass signals along coax, and no frames. */
export const AERIAL_KINDS = [
  'aerial',
  'lnb',
  'amplifier',
  'attenuator',
  'filter',
  'equaliser',
  'splitter',
  'tap',
  'combiner',
  'diplexer',
  'multiswitch',
  'outlet',
  'power-inserter',
  'isolator',
  'earth-block',
] as const;

export type AerialKind = (typeof AERIAL_KINDS)[number];

/** A value in dB: the same at all frequencies, or by Hz with straight lines between the points. */
export type ByFrequency = number | readonly (readonly [frequency: number, value: number])[];

/** A part of an aerial system as declared; `undefined` where undeclared. Levels are dBµV, ratios dB. */
export interface AerialPart {
  readonly frequencies: FrequencyRange | undefined;
  /** By multiplex, at its connector. */
  readonly receives: ReadonlyMap<string, number>;
  /** By multiplex, dBµV/m. */
  readonly field: ReadonlyMap<string, number>;
  /** Carrier to noise by multiplex, as metered. */
  readonly quality: ReadonlyMap<string, number>;
  readonly gain: number | undefined;
  readonly noiseFigure: number | undefined;
  readonly maxOutput: number | undefined;
  readonly poweredBy: 'in' | 'out' | undefined;
  /** Millivolts. */
  readonly supply: number | undefined;
  /** Milliamperes. */
  readonly current: number | undefined;
  readonly loss: ByFrequency | undefined;
  readonly tapLoss: ByFrequency | undefined;
  readonly slope: number | undefined;
  readonly ways: number;
  readonly terminated: readonly string[];
  readonly isolation: number | undefined;
  /** Direct current passes to all of its outputs, or to those listed. */
  readonly powerPass: boolean | readonly string[] | undefined;
  readonly mast: Mast | undefined;
  readonly lnb: 'single' | 'twin' | 'quad' | 'quattro';
}

export interface Mast {
  readonly outsideProtectedZone: boolean;
  /** Cross-section, hundredths of mm². */
  readonly earthed: number | undefined;
}

/** What a receiver takes at a coax connector, or a combiner lets in there. */
export interface CoaxInput {
  readonly systems: readonly System[] | undefined;
  readonly noiseFigure: number | undefined;
  readonly maxInput: number | undefined;
  /** Milliamperes that it can put onto the coax. */
  readonly supplies: number | undefined;
  /** Millivolts. */
  readonly supply: number | undefined;
  /** The frequencies that a combiner passes. */
  readonly passes: FrequencyRange | undefined;
}

export interface TunerUnit {
  readonly name: string;
  readonly keyPath: KeyPath;
  readonly systems: readonly System[];
  /** The connector that it listens at. */
  readonly input: string | undefined;
}

export interface Bus {
  readonly name: string;
  readonly kind: BusKind;
  /** bit/s */
  readonly usable: number | undefined;
}

interface Fact {
  readonly item: Item;
  readonly name: string;
}

/** A transport stream on a frequency, as it is declared. */
export interface Multiplex extends Fact {
  readonly system: System | undefined;
  readonly channel: number | string | undefined;
  /** Hz; of a satellite in the sky. */
  readonly frequency: number | undefined;
  /** Hz. */
  readonly bandwidth: number | undefined;
  readonly modulation: Modulation | undefined;
  readonly codeRate: string | undefined;
  readonly guardInterval: string | undefined;
  readonly extended: boolean;
  /** Bd. */
  readonly symbolRate: number | undefined;
  readonly polarisation: Polarisation | undefined;
  readonly pilots: boolean;
  readonly segments: number | undefined;
  readonly frame: T2Frame | undefined;
  /** bit/s */
  readonly netRate: number | undefined;
}

export interface Service extends Fact {
  /** Any of them will do. */
  readonly multiplexes: readonly string[];
  /** bit/s */
  readonly rate: number | undefined;
  readonly peakRate: number | undefined;
}

export interface Occasion extends Fact {
  readonly services: readonly string[];
  readonly multiplexes: readonly string[];
}

/** What a coax declares besides its type and length. */
export interface CoaxFacts {
  readonly core: CoaxCore | undefined;
  /** dB per 100 m by Hz. */
  readonly attenuation: readonly (readonly [frequency: number, value: number])[] | undefined;
}

/** The limits for reception; defaults are common practice. Ratios in dB, levels in dBµV. */
export interface AerialPolicy {
  readonly margin: number;
  readonly levelReserve: number;
  readonly slope: number;
  readonly outletLevel: ReadonlyMap<string, { readonly min: number | undefined; readonly max: number | undefined }>;
}
