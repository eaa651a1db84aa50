/**
 * What feeds each device, what it draws, and how long it goes on when the mains fails.
 *
 * Nothing sheds load: a UPS feeds all its devices until the battery is empty.
 */

import type { PoeFigures } from '../network/poe.ts';
import type { Topology } from '../network/wiring.ts';
import type { Device } from '../site/model.ts';
import { type DevicePower, type Watts, devicePowers } from './device-power.ts';
import { type Feeding, feedingOf } from './feeding.ts';
import { type UpsFigures, upsFigures } from './ups.ts';

export interface Supply {
  readonly feeding: Feeding;
  readonly power: (device: Device) => DevicePower;
  /** In the order of the site. */
  readonly upses: readonly UpsFigures[];
  readonly ups: (device: Device) => UpsFigures | undefined;
  /**
   * ms for which it has power when the mains fails: 0 without a battery, `undefined` where the battery is undeclared.
   */
  readonly lasts: (device: Device) => number | undefined;
  /** What the whole site takes from the mains, and the devices whose watts are undeclared. */
  readonly total: Watts;
  readonly undeclared: readonly Device[];
  /** Whether the site declares anything of what feeds its devices. */
  readonly isDeclared: boolean;
}

export function supplyOf(
  devices: readonly Device[],
  deviceByName: ReadonlyMap<string, Device>,
  poe: readonly PoeFigures[],
  linkAt: Topology['linkAt'],
): Supply {
  const feeding = feedingOf(devices, deviceByName, poe);
  const powers = devicePowers(devices, feeding, linkAt);
  const power = (device: Device): DevicePower => {
    const own = powers.get(device);
    if (own === undefined) throw new Error(`${device.name} is not a device of this site`);
    return own;
  };
  const upses = devices.flatMap((device) =>
    device.ups === undefined ? [] : [upsFigures(device, device.ups, power(device))],
  );
  const byUps = new Map(upses.map((figures) => [figures.device, figures]));
  const roots = devices.filter((device) => feeding.of(device).by === 'mains');
  const total = (part: keyof Watts): number => roots.reduce((sum, device) => sum + power(device).taken[part], 0);
  return {
    feeding,
    power,
    upses,
    ups: (device) => byUps.get(device),
    lasts: (device) => lastsOf(device, feeding, (one) => byUps.get(one)),
    total: { most: total('most'), mean: total('mean'), byClass: total('byClass') },
    undeclared: roots.flatMap((device) => power(device).undeclared),
    isDeclared: devices.some(({ ownPower, ups }) => ownPower !== undefined || ups !== undefined),
  };
}

function lastsOf(
  device: Device,
  feeding: Feeding,
  ups: (device: Device) => UpsFigures | undefined,
): number | undefined {
  const own = alongWay(device, feeding, ups);
  const standby = feeding.standby(device);
  if (own === undefined || standby === undefined) return own;
  const other = alongWay(standby.from.device, feeding, ups);
  return other === undefined ? undefined : Math.max(own, other);
}

/** The runtimes of all batteries on the way to the mains, added up. */
function alongWay(
  device: Device,
  feeding: Feeding,
  ups: (device: Device) => UpsFigures | undefined,
): number | undefined {
  let total = 0;
  for (let at: Device | undefined = device; at !== undefined; at = nextOf(at, feeding)) {
    if (at.ups === undefined) continue;
    const runtime = ups(at)?.runtime;
    if (runtime === undefined) return undefined;
    total += runtime;
  }
  return total;
}

function nextOf(device: Device, feeding: Feeding): Device | undefined {
  const fed = feeding.of(device);
  return fed.by === 'mains' ? undefined : fed.device;
}
