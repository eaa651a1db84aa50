/**
 * Levels of radio signals on coax: decibels over one microvolt across 75 Ω (dBµV), as the root mean square over the
 * occupied bandwidth.
 *
 * Source: definitions, and P = U²/R; the field of a half-wave dipole in free space (gain 2.15 dBi, 120π Ω).
 */

/** The impedance of coax for television, ohms. */
const IMPEDANCE = 75;

/** The level of 1 mW, dBµV: dBm and dBµV differ by it. */
export const LEVEL_OF_MILLIWATT = 20 * Math.log10(Math.sqrt(0.001 * IMPEDANCE) / 1e-6);

/** The level of 1 mV, dBµV: dBmV and dBµV differ by it. */
export const LEVEL_OF_MILLIVOLT = 60;

/** The level of several signals together, dBµV: their powers add up. `-Infinity` for none. */
export function sumOfLevels(levels: Iterable<number>): number {
  let power = 0;
  for (const level of levels) power += ratioOf(level);
  return decibels(power);
}

/**
 * The level at the terminals of a matched aerial, dBµV.
 *
 * @param field strength, dBµV/m
 * @param gain over a half-wave dipole, dBd
 * @param frequency Hz
 */
export function levelFromField(field: number, gain: number, frequency: number): number {
  return field + gain + DIPOLE - 20 * Math.log10(frequency / 1e6);
}

/** Of a half-wave dipole at 1 MHz: U² = R · E²/(120π) · 1.6409 · λ²/(4π), wavelength in metres. */
const DIPOLE = 20 * Math.log10(299.792458 * Math.sqrt((IMPEDANCE * 1.6409) / (120 * Math.PI * 4 * Math.PI)));

/** Power ratio to decibels. */
export function decibels(ratio: number): number {
  return 10 * Math.log10(ratio);
}

/** Decibels to power ratio. */
export function ratioOf(decibel: number): number {
  return 10 ** (decibel / 10);
}
