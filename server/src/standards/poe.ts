/**
 * Power over Ethernet: what a class may draw at the device, and what the switch must set aside for it.
 *
 * Sources: classes 1 to 8 from the Ethernet Alliance's "Overview of 802.3bt" (April 2018), a secondary transcription
 * of IEEE 802.3bt; class 0 from memory; totals of the types from Linux's documentation of power sourcing equipment,
 * secondary. The standard's text was not read. Power is in whole milliwatts.
 */

/**
 * `pseMilliwatts` leaves the switch port, `pdMilliwatts` arrives at the powered device behind 100 m of cable; the
 * difference is the loss in the cable. A budget counts the first.
 */
export interface PowerClass {
  readonly class: number;
  readonly pseMilliwatts: number;
  readonly pdMilliwatts: number;
  /** The PoE type that first has the class. */
  readonly type: 1 | 2 | 3 | 4;
}

/** Classes 0 to 8, each at its own index. Class 3 is 12.95 W at the device in 802.3af, 13 W in 802.3bt. */
export const powerClasses: readonly PowerClass[] = [
  { class: 0, pseMilliwatts: 15_400, pdMilliwatts: 12_950, type: 1 },
  { class: 1, pseMilliwatts: 4000, pdMilliwatts: 3840, type: 1 },
  { class: 2, pseMilliwatts: 7000, pdMilliwatts: 6490, type: 1 },
  { class: 3, pseMilliwatts: 15_400, pdMilliwatts: 13_000, type: 1 },
  { class: 4, pseMilliwatts: 30_000, pdMilliwatts: 25_500, type: 2 },
  { class: 5, pseMilliwatts: 45_000, pdMilliwatts: 40_000, type: 3 },
  { class: 6, pseMilliwatts: 60_000, pdMilliwatts: 51_000, type: 3 },
  { class: 7, pseMilliwatts: 75_000, pdMilliwatts: 62_000, type: 4 },
  { class: 8, pseMilliwatts: 90_000, pdMilliwatts: 71_300, type: 4 },
];

/** What a port offers: 802.3af (type 1), 802.3at (type 2), 802.3bt type 3, 802.3bt type 4. */
export type PortType = 'af' | 'at' | 'bt' | 'bt-type-4';

/** The most that a port of each type gives at the switch, and the highest class that it can power. */
export const portTypes: Readonly<Record<PortType, { readonly pseMilliwatts: number; readonly maxClass: number }>> = {
  'af': { pseMilliwatts: 15_400, maxClass: 3 },
  'at': { pseMilliwatts: 30_000, maxClass: 4 },
  'bt': { pseMilliwatts: 60_000, maxClass: 6 },
  'bt-type-4': { pseMilliwatts: 90_000, maxClass: 8 },
};

/** The lowest class that gives the device enough, or undefined if none does. Class 0, "unknown", is never chosen. */
export function classFor(pdMilliwatts: number): PowerClass | undefined {
  return powerClasses.find((power) => power.class > 0 && pdMilliwatts <= power.pdMilliwatts);
}

/** The assumed supply voltage of a switch, mV: most feed near 54 V (common practice, from memory). */
export const SUPPLY_MILLIVOLTS = 54_000;

/**
 * Ohms of 100 m of cable there and back over two pairs, Cat 5e and better: 12.5 Ω, which gives the 30 W and 25.5 W of
 * class 4 at 0.6 A. From memory of IEEE 802.3.
 */
export const LOOP_OHMS = 12.5;
/** The same of Type 1, which gives the 15.4 W and 12.95 W of class 3 at 0.35 A. */
export const TYPE_1_LOOP_OHMS = 20;

/** Ohms of a cable, there and back; from class 5 power goes over all four pairs, with half the resistance. */
export function loopOhms(metres: number, powerClass: number): number {
  return ((LOOP_OHMS * metres) / 100) * (powerClass > 4 ? 0.5 : 1);
}

/**
 * mW that leave the port of the switch where a device draws `milliwatts` behind a cable, from P = (U − I·R)·I; undefined
 * where so much cannot arrive.
 */
export function powerAtPort(milliwatts: number, ohms: number, millivolts = SUPPLY_MILLIVOLTS): number | undefined {
  const volts = millivolts / 1000;
  const root = volts ** 2 - 4 * ohms * (milliwatts / 1000);
  if (root < 0) return undefined;
  // The smaller root of R·I² − U·I + P = 0, written so that R may be zero.
  const amperes = (2 * (milliwatts / 1000)) / (volts + Math.sqrt(root));
  return volts * amperes * 1000;
}
