/** What feeds each device: the UPS or circuit that it names, a switch by PoE, the host it is plugged into, or the mains. */

import { grouped } from '../grouped.ts';
import type { PoeFeed, PoeFigures } from '../network/poe.ts';
import type { Device } from '../site/model.ts';

export type Fed =
  /** A UPS or a circuit. */
  | { readonly by: 'source'; readonly device: Device }
  | { readonly by: 'poe'; readonly device: Device; readonly feed: PoeFeed }
  /** The device that it is plugged into, whose watts include its own. */
  | { readonly by: 'host'; readonly device: Device }
  /** A socket of the mains; a device that declares nothing of its power counts as fed so. */
  | { readonly by: 'mains'; readonly isDeclared: boolean };

export interface Feeding {
  of(device: Device): Fed;
  /** The second supply of a device that has both a plug and PoE, should the plug's end. */
  standby(device: Device): PoeFeed | undefined;
  /** The devices that it feeds, in the order of the site. */
  fedBy(device: Device): readonly Device[];
  /** Devices that feed each other in a circle. */
  readonly circles: readonly (readonly Device[])[];
}

const MAINS: Fed = { by: 'mains', isDeclared: true };
const UNSAID: Fed = { by: 'mains', isDeclared: false };

/** Whether other devices may name it as their source. */
export function isPowerSource({ kind }: Device): boolean {
  return kind === 'ups' || kind === 'circuit';
}

/** @param poe what each switch feeds by PoE */
export function feedingOf(
  devices: readonly Device[],
  deviceByName: ReadonlyMap<string, Device>,
  poe: readonly PoeFigures[],
): Feeding {
  const feedOf = new Map<Device, PoeFeed>();
  for (const { feeds } of poe)
    for (const feed of feeds) if (!feedOf.has(feed.to.device)) feedOf.set(feed.to.device, feed);
  const byDevice = new Map(devices.map((device) => [device, fedAsSaid(device, deviceByName, feedOf.get(device))]));
  const circles = circlesAmong(byDevice);
  // Devices in a circle have no source that can be followed.
  for (const device of circles.flat()) byDevice.set(device, UNSAID);
  const hanging = grouped(devices, (device) => feederIn(byDevice.get(device)));
  return {
    of: (device) => byDevice.get(device) ?? UNSAID,
    standby: (device) => (byDevice.get(device)?.by === 'source' ? feedOf.get(device) : undefined),
    fedBy: (device) => hanging.get(device) ?? [],
    circles,
  };
}

function fedAsSaid(device: Device, deviceByName: ReadonlyMap<string, Device>, feed: PoeFeed | undefined): Fed {
  const { ownPower, host } = device;
  const source = ownPower?.from === undefined ? undefined : deviceByName.get(ownPower.from);
  if (source !== undefined && isPowerSource(source)) return { by: 'source', device: source };
  if (feed !== undefined) return { by: 'poe', device: feed.from.device, feed };
  const plugged = host === undefined ? undefined : deviceByName.get(host);
  if (plugged !== undefined) return { by: 'host', device: plugged };
  // It names an undeclared device, or one that feeds nothing.
  if (ownPower?.from !== undefined) return UNSAID;
  return ownPower === undefined && !isPowerSource(device) ? UNSAID : MAINS;
}

function feederIn(fed: Fed | undefined): Device | undefined {
  return fed === undefined || fed.by === 'mains' ? undefined : fed.device;
}

function circlesAmong(byDevice: ReadonlyMap<Device, Fed>): Device[][] {
  const clear = new Set<Device>();
  const circles: Device[][] = [];
  for (const start of byDevice.keys()) {
    const way: Device[] = [];
    const on = new Set<Device>();
    let at: Device | undefined = start;
    while (at !== undefined && !clear.has(at) && !on.has(at)) {
      on.add(at);
      way.push(at);
      at = feederIn(byDevice.get(at));
    }
    if (at !== undefined && on.has(at)) circles.push(way.slice(way.indexOf(at)));
    for (const device of way) clear.add(device);
  }
  return circles;
}
