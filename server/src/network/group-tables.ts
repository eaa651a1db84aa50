/** How many groups each snooping switch must keep in its table (RFC 4541 §2.1.1). */

import type { Device, Site } from '../site/model.ts';
import { isMulticast } from '../standards/ipv4.ts';
import { type Bridge, bridgeOf } from './bridge-tree.ts';
import { oppositePort } from './link.ts';
import type { Network } from './network.ts';

/**
 * The number of groups for each switch that declares the size of its table. A group takes one entry in each VLAN, at
 * each snooping switch that a report of it passes on the way from the receiver to the querier.
 */
export function groupTables(
  { devices, deviceByName }: Pick<Site, 'devices' | 'deviceByName'>,
  { deliveries, interfaces, tree }: Pick<Network, 'deliveries' | 'interfaces' | 'tree'>,
): ReadonlyMap<Device, number> {
  const kept = new Map<Device, Set<string>>();
  for (const device of devices) if (device.groupTable !== undefined) kept.set(device, new Set());
  if (kept.size === 0) return new Map();
  for (const { stream, domains } of deliveries) {
    const { group, receivers } = stream;
    if (group === undefined || !isMulticast(group)) continue;
    for (const domain of domains)
      for (const name of receivers) {
        const receiver = deviceByName.get(name);
        const at = receiver === undefined ? undefined : interfaces.in(receiver, domain);
        if (at === undefined) continue;
        // The way up the tree is the way to the querier.
        const first: Bridge | undefined = bridgeOf(tree(domain), oppositePort(at.link, at.port));
        for (let bridge = first; bridge !== undefined; bridge = bridge.parent)
          if (bridge.snoops) kept.get(bridge.device)?.add(`${domain.name} ${group}`);
      }
  }
  return new Map([...kept].map(([device, { size }]) => [device, size]));
}
