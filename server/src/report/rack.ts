/** What `plumbline report --format json` prints of a rack. */

import type { MountedDevice, RackFigures, RackSide } from '../racks/racks.ts';

export interface RackReport {
  readonly name: string;
  readonly units: number | null;
  /** Numbers of the units with nothing on that side. */
  readonly free: Readonly<Record<RackSide, readonly number[]>>;
  /** The sum of all declared weights in it, kg. */
  readonly weight: number;
  /** The greatest load that it bears, kg. */
  readonly bears: number | null;
  readonly devices: readonly RackDeviceReport[];
}

interface RackDeviceReport {
  readonly name: string;
  /** The lowest number of its units. */
  readonly unit: number | null;
  readonly units: number;
  readonly side: RackSide;
}

export function rackReport({ rack, placed, elsewhere, free, weight }: RackFigures): RackReport {
  return {
    name: rack.name,
    units: rack.units ?? null,
    free: { front: [...free.front], rear: [...free.rear] },
    weight: weight / 1000,
    bears: rack.bears === undefined ? null : rack.bears / 1000,
    devices: [
      ...placed.map(({ device, first }) => deviceReport(device, first)),
      ...elsewhere.map((device) => deviceReport(device, null)),
    ],
  };
}

function deviceReport(
  { name, mounting: { units, side } }: MountedDevice['device'],
  unit: number | null,
): RackDeviceReport {
  return { name, unit, units, side };
}
