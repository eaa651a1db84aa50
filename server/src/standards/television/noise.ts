/**
 * Thermal noise, and what a chain of parts adds to it.
 *
 * Source: N = k T₀ B with T₀ = 290 K; Friis' formula for noise factors; a passive part at T₀ has its loss as noise
 * factor. Man-made noise: Rec. ITU-R BT.2033-2, tables 31 and 32, by a transcription.
 */

import { LEVEL_OF_MILLIWATT, decibels, ratioOf } from './level.ts';

/** Joules per kelvin, exact since the SI of 2019. */
const BOLTZMANN = 1.380649e-23;
/** Kelvin; the temperature that noise figures are defined at. */
const REFERENCE_TEMPERATURE = 290;

/** The level of thermal noise in a bandwidth in Hz, dBµV. */
export function noiseFloor(bandwidth: number): number {
  return decibels(BOLTZMANN * REFERENCE_TEMPERATURE * bandwidth * 1000) + LEVEL_OF_MILLIWATT;
}

/** What man-made noise adds at a rooftop aerial, dB: VHF band III has some, UHF none. */
export function manMadeNoise(frequency: number): number {
  return frequency < 300e6 ? 2 : 0;
}

/** A part of a chain: gain in dB, below 0 for a loss, and its noise figure in dB. */
export interface Stage {
  readonly gain: number;
  readonly noiseFigure: number;
}

export function lossy(loss: number): Stage {
  return { gain: -loss, noiseFigure: loss };
}

/** The noise factor and the gain of a chain, both as ratios of power. */
export interface Chain {
  readonly factor: number;
  readonly gain: number;
}

export const NO_CHAIN: Chain = { factor: 1, gain: 1 };

/** With one more stage at its end. F = F₁ + (F₂ − 1)/G₁ + (F₃ − 1)/(G₁G₂) + … */
export function lengthened({ factor, gain }: Chain, stage: Stage): Chain {
  return {
    factor: factor + (ratioOf(stage.noiseFigure) - 1) / gain,
    gain: gain * ratioOf(stage.gain),
  };
}

/** The noise figure of a chain, dB; 0 for an empty one. */
export function noiseFigureOf(stages: readonly Stage[]): number {
  return decibels(stages.reduce(lengthened, NO_CHAIN).factor);
}

/** Several ratios of carrier to disturbance as one, dB: the disturbances' powers add up. `Infinity` for none. */
export function combinedRatio(ratios: Iterable<number>): number {
  let disturbance = 0;
  for (const ratio of ratios) disturbance += ratioOf(-ratio);
  return -decibels(disturbance);
}
