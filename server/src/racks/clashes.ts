/** Devices that clash in a rack. */

import { OPENING } from '../standards/rack.ts';
import { type MountedDevice, type RackFigures, type RackSide, meet } from './racks.ts';

/** Devices at one side of a unit that has no room for them all. */
export interface Crowded {
  readonly unit: number;
  /** All devices in the unit, the first one first. */
  readonly all: readonly MountedDevice[];
  /** Their total width, mm; `undefined` where one is undeclared, and counts as needing the whole width. */
  readonly width: number | undefined;
}

/** A device at the rear and one at the front that are too deep together. */
export interface TooDeep {
  readonly front: MountedDevice;
  /** The depths of both, mm. */
  readonly depths: readonly [front: number, rear: number];
}

/** The clashes of a device. The first device in a unit clashes with none. */
export interface Clashes {
  crowded(placed: MountedDevice): Crowded | undefined;
  /** The clash of a device at the rear with one at the front. */
  tooDeep(placed: MountedDevice): TooDeep | undefined;
}

export function clashesIn({ rack, placed: all }: RackFigures): Clashes {
  const units = { front: byUnit(all, 'front'), rear: byUnit(all, 'rear') };
  return {
    crowded(placed) {
      for (let unit = placed.first; unit <= placed.last; unit++) {
        const here = units[placed.side].get(unit) ?? [];
        if (here[0] === placed || here.length < 2) continue;
        const width = widthOf(here);
        if (width === undefined || width > OPENING) return { unit, all: here, width };
      }
      return undefined;
    },
    tooDeep(placed) {
      const own = placed.device.mounting.depth;
      if (placed.side === 'front' || own === undefined || rack.depth === undefined) return undefined;
      for (let unit = placed.first; unit <= placed.last; unit++)
        for (const front of units.front.get(unit) ?? []) {
          const { depth } = front.device.mounting;
          if (depth !== undefined && depth + own > rack.depth) return { front, depths: [depth, own] };
        }
      return undefined;
    },
  };
}

function widthOf(placed: readonly MountedDevice[]): number | undefined {
  let sum = 0;
  for (const { device } of placed) {
    if (device.mounting.width === undefined) return undefined;
    sum += device.mounting.width;
  }
  return sum;
}

function byUnit(all: readonly MountedDevice[], side: RackSide): ReadonlyMap<number, readonly MountedDevice[]> {
  const found = new Map<number, MountedDevice[]>();
  for (const one of all) {
    if (one.side !== side) continue;
    for (let unit = one.first; unit <= one.last; unit++) {
      const here = found.get(unit);
      if (here === undefined) found.set(unit, [one]);
      else here.push(one);
    }
  }
  return found;
}

/** Where a device could go instead: the lowest number of the nearest units that are free at both sides. */
export function freePlace({ rack, placed: all }: RackFigures, placed: MountedDevice): number | undefined {
  const high = placed.last - placed.first + 1;
  const others = all.filter((other) => other !== placed);
  return Array.from({ length: Math.max(0, (rack.units ?? 0) - high + 1) }, (_, index) => index + 1)
    .filter((first) => others.every((other) => !meet(other, { ...placed, first, last: first + high - 1 })))
    .sort((a, b) => Math.abs(a - placed.first) - Math.abs(b - placed.first))[0];
}
