/** The devices in each rack, and its free units. Lengths in millimetres, weights in grams. */

import { grouped } from '../grouped.ts';
import { NONE } from '../none.ts';
import type { Device, Rack } from '../site/model.ts';

export type RackSide = 'front' | 'rear';

/** A device that has its units in a rack. */
export interface MountedDevice {
  readonly device: Device;
  /** The lowest number of its units, and the highest. */
  readonly first: number;
  readonly last: number;
  readonly side: RackSide;
}

export interface RackFigures {
  readonly rack: Rack;
  /** From unit 1 on; in one unit in the order of the site. */
  readonly placed: readonly MountedDevice[];
  /** Devices in the rack without a declared unit. */
  readonly elsewhere: readonly Device[];
  /** Numbers of the units with nothing on that side; none where the rack does not declare its units. */
  readonly free: Readonly<Record<RackSide, readonly number[]>>;
  /** The sum of all declared weights in it, grams. */
  readonly weight: number;
  /** The devices without a declared weight. */
  readonly unweighed: readonly Device[];
}

/** In the order of the site. */
export function racksOf(racks: readonly Rack[], devices: readonly Device[]): readonly RackFigures[] {
  if (racks.length === 0) return NONE;
  const byRack = grouped(devices, ({ mounting }) => mounting.rack);
  return racks.map((rack) => figuresOf(rack, byRack.get(rack.name) ?? NONE));
}

function figuresOf(rack: Rack, devices: readonly Device[]): RackFigures {
  const placed = devices.flatMap((device): MountedDevice[] => {
    const { unit, units, side } = device.mounting;
    return unit === undefined ? [] : [{ device, first: unit, last: unit + units - 1, side }];
  });
  placed.sort((a, b) => a.first - b.first);
  return {
    rack,
    placed,
    elsewhere: devices.filter(({ mounting }) => mounting.unit === undefined),
    free: { front: freeUnits(rack, placed, 'front'), rear: freeUnits(rack, placed, 'rear') },
    weight: devices.reduce((sum, { mounting }) => sum + (mounting.weight ?? 0), 0),
    unweighed: devices.filter(({ mounting }) => mounting.weight === undefined),
  };
}

function freeUnits({ units = 0 }: Rack, placed: readonly MountedDevice[], side: RackSide): readonly number[] {
  const taken = new Set<number>();
  for (const one of placed)
    if (one.side === side) for (let unit = one.first; unit <= Math.min(one.last, units); unit++) taken.add(unit);
  return Array.from({ length: units }, (_, index) => index + 1).filter((unit) => !taken.has(unit));
}

/** Whether the units of two have one in common. */
export function meet(a: MountedDevice, b: MountedDevice): boolean {
  return a.first <= b.last && b.first <= a.last;
}

/** `U 3`, `U 3–4`. */
export function unitWords({ first, last }: Pick<MountedDevice, 'first' | 'last'>): string {
  return first === last ? `U ${first}` : `U ${first}–${last}`;
}
