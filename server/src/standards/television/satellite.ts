/**
 * Satellite reception by a universal LNB: which of its four planes a transponder is on, and its frequency on the cable.
 *
 * Sources: oscillators and the change of band as a library for DVB has them; voltages and tone as the Linux kernel
 * names them; which voltage stands for which polarisation is from memory of EN 61319-1.
 */

export type Polarisation = 'vertical' | 'horizontal' | 'left' | 'right';

export type SatelliteBand = 'low' | 'high';

/** What a tuner asks an LNB for: one cable carries one plane at a time. */
export interface Plane {
  /** 13 V asks for vertical or right, 18 V for horizontal or left. */
  readonly volts: 13 | 18;
  /** The tone of 22 kHz, which asks for the high band. */
  readonly tone: boolean;
}

const MHZ = 1e6;
/** The lowest frequency of the high band. */
const CHANGE = 11_700 * MHZ;
const LOW_OSCILLATOR = 9750 * MHZ;
const HIGH_OSCILLATOR = 10_600 * MHZ;

export function satelliteBand(frequency: number): SatelliteBand {
  return frequency < CHANGE ? 'low' : 'high';
}

/** The first intermediate frequency, Hz, of a transponder at a frequency in Hz. */
export function intermediateFrequency(frequency: number): number {
  return frequency - (satelliteBand(frequency) === 'low' ? LOW_OSCILLATOR : HIGH_OSCILLATOR);
}

export function planeOf(polarisation: Polarisation, frequency: number): Plane {
  return {
    volts: polarisation === 'vertical' || polarisation === 'right' ? 13 : 18,
    tone: satelliteBand(frequency) === 'high',
  };
}
