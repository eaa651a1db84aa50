/** The best place for the querier of a VLAN. */

import type { Device, Site } from '../site/model.ts';
import { type Bridge, type BridgeTree, bridgeOf, bridgesBetween } from './bridge-tree.ts';
import { oppositePort } from './link.ts';
import type { BroadcastDomain } from './vlan-membership.ts';
import type { Network } from './network.ts';

/**
 * The snooping switch nearest the senders, weighted by what they send into the domain: every group travels to the
 * querier, so it adds least to the links between switches there. A switch with an address comes first, since other
 * switches do not learn the way to a querier without one; if no switch has an address, a router that has one.
 * `alsoSnooping` counts as snooping. `undefined` where no switch snoops.
 */
export function bestQuerier(
  site: Site,
  network: Network,
  domain: BroadcastDomain,
  alsoSnooping?: Device,
): Device | undefined {
  const tree = network.tree(domain);
  const sent = sentInto(network, tree);
  const addressed = new Set(
    network.addressUses.filter(({ vlans, home }) => [...vlans, home].includes(domain.vlan)).map(({ device }) => device),
  );
  let best: { readonly device: Device; readonly hasAddress: boolean; readonly cost: number } | undefined;
  for (const device of site.devices) {
    const bridge = tree.bridges.get(device);
    if (bridge === undefined || device.kind !== 'switch' || (!device.snooping && device !== alsoSnooping)) continue;
    const hasAddress = addressed.has(device);
    let cost = 0;
    for (const [at, rate] of sent) cost += rate * steps(bridge, at);
    if (best === undefined || (hasAddress === best.hasAddress ? cost < best.cost : hasAddress))
      best = { device, hasAddress, cost };
  }
  if (best === undefined || best.hasAddress || tree.bridges.size < 2) return best?.device;
  const router = network.routers.find((device) => device.kind === 'router' && addressed.has(device));
  return router ?? best.device;
}

/** bit/s of multicast by the bridge where it enters. */
function sentInto(network: Network, tree: BridgeTree): Map<Bridge, number> {
  const sent = new Map<Bridge, number>();
  for (const { stream, leaves } of network.deliveries) {
    if (stream.group === undefined || leaves?.domain !== tree.domain) continue;
    const bridge = bridgeOf(tree, oppositePort(leaves.link, leaves.port));
    if (bridge === undefined) continue;
    sent.set(bridge, (sent.get(bridge) ?? 0) + network.rates(stream).untagged.line.peak);
  }
  return sent;
}

/** The number of links between two bridges; `APART` where nothing joins them. */
function steps(from: Bridge, to: Bridge): number {
  const path = bridgesBetween(from, to);
  return path === undefined ? APART : path.length - 1;
}

const APART = 1000;
