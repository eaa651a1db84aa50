/**
 * Loss and resistance of coax by the trade's series.
 *
 * Loss per 100 m is A·√f + B·f, f in MHz: the skin effect and the dielectric. Sources: series 6 is fitted to a
 * supplier's table of losses from 57 to 2150 MHz, within 0.5 dB; 59 and 11 follow from it by the ratio of conductor
 * losses that their dimensions give (1.25, 0.64). Resistance: the core of 1.02 mm copper computed, the rest from
 * memory.
 */

export type CoaxType = 'coax-59' | 'coax-6' | 'coax-11';

/** The material of the core: solid copper, or steel clad with copper. */
export type CoaxCore = 'copper' | 'clad-steel';

interface Attenuation {
  /** dB per 100 m and √MHz. */
  readonly skin: number;
  /** dB per 100 m and MHz. */
  readonly dielectric: number;
}

export const COAX: Readonly<Record<CoaxType, Attenuation>> = {
  'coax-59': { skin: 0.82, dielectric: 0.0008 },
  'coax-6': { skin: 0.66, dielectric: 0.0008 },
  'coax-11': { skin: 0.42, dielectric: 0.0008 },
};

/** Whether a type of cable is a coax. */
export function isCoax(type: string | undefined): type is CoaxType {
  return type !== undefined && Object.hasOwn(COAX, type);
}

/** Loss in dB of a length in metres at a frequency in Hz. */
export function coaxLoss(type: CoaxType, metres: number, frequency: number): number {
  const { skin, dielectric } = COAX[type];
  const megahertz = frequency / 1e6;
  return ((skin * Math.sqrt(megahertz) + dielectric * megahertz) * metres) / 100;
}

/** Resistance of core and screen together, ohms per metre. */
export const LOOP_RESISTANCE: Readonly<Record<CoaxCore, number>> = { 'copper': 0.04, 'clad-steel': 0.12 };
