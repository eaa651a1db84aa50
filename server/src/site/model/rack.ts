/** Racks, and the places of devices in them. Lengths in millimetres, weights in grams. */

import type { Fact } from './fact.ts';

/** No rack has more units: a larger number is reported and ignored. */
export const MOST_UNITS = 100;

export interface Rack extends Fact {
  readonly units: number | undefined;
  readonly depth: number | undefined;
  readonly numberedFrom: 'bottom' | 'top';
  /** The weight that may be in it. */
  readonly bears: number | undefined;
}

/** Where a device is in a rack. */
export interface Mounting {
  /** By name. */
  readonly rack: string | undefined;
  /** The lowest number of the units that it is in. */
  readonly unit: number | undefined;
  readonly units: number;
  readonly side: 'front' | 'rear';
  /** Where it stands beside others. */
  readonly width: number | undefined;
  readonly depth: number | undefined;
  readonly weight: number | undefined;
}
