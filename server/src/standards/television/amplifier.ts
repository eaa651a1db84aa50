/**
 * How much an amplifier may put out.
 *
 * Makers give the largest output for two carriers at a third-order distance of 60 dB (as DIN 45004B measures). Source
 * of the derating: common practice, and within 1 dB of two makers' tables; of the growth of distortion: the cubic term.
 */

/** dB by which the largest output falls for so many carriers; 0 for one and two. */
export function derating(carriers: number): number {
  return carriers <= 2 ? 0 : 7.5 * Math.log10(carriers - 1);
}

/** Carrier to intermodulation, dB, at so many dB below the limit; a bound, as its start of 60 dB is by convention. */
export function intermodulationRatio(headroom: number): number {
  return 60 + 2 * headroom;
}
