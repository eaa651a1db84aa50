/**
 * How long a battery feeds a load.
 *
 * Sources: energy over power is physics. Peukert's law and its exponent of 1.1 to 1.2 for lead-acid batteries, whose
 * capacity is given for a discharge in 20 hours, are from memory, as are the shares that are assumed: common practice.
 */

export type BatteryChemistry = 'lead-acid' | 'lithium';

/** Shares in ten-thousandths, where undeclared. */
export const ASSUMED_EFFICIENCY = 8500;
export const ASSUMED_DEPTH = 8000;
export const ASSUMED_HEALTH = 8000;

/** Hours in which a lead-acid battery gives the capacity on its label. */
export const RATED_HOURS = 20;
export const PEUKERT_EXPONENT = 1.15;

export interface Battery {
  /** mWh, as new. */
  readonly energy: number;
  /** Ten-thousandths: of what leaves the battery, how much comes out of the sockets. */
  readonly efficiency: number;
  /** Ten-thousandths of its charge that are used. */
  readonly depth: number;
  /** Ten-thousandths of its capacity as new that are left. */
  readonly health: number;
}

/** Hours at a steady load in mW: E · η · d · a ÷ P. */
export function hoursOf({ energy, efficiency, depth, health }: Battery, load: number): number {
  return (energy * (efficiency / 1e4) * (depth / 1e4) * (health / 1e4)) / load;
}

/**
 * Hours of a new lead-acid battery, fully discharged: H · (C ÷ (I · H))^k. The voltage cancels, so that C ÷ I is
 * energy over the power that the battery gives.
 */
export function peukertHours(
  { energy, efficiency }: Pick<Battery, 'energy' | 'efficiency'>,
  load: number,
  exponent = PEUKERT_EXPONENT,
): number {
  const steady = (energy * (efficiency / 1e4)) / load;
  return RATED_HOURS * (steady / RATED_HOURS) ** exponent;
}

/** mWh, as new, of a battery that feeds a load in mW for so many hours. */
export function energyFor(hours: number, load: number, { efficiency, depth, health }: Omit<Battery, 'energy'>): number {
  return (load * hours) / ((efficiency / 1e4) * (depth / 1e4) * (health / 1e4));
}

/** The same for a new lead-acid battery, fully discharged. */
export function peukertEnergyFor(hours: number, load: number, { efficiency }: Pick<Battery, 'efficiency'>): number {
  return (RATED_HOURS * load * (hours / RATED_HOURS) ** (1 / PEUKERT_EXPONENT)) / (efficiency / 1e4);
}
