/** What multicast crosses a link although nobody behind it has asked for it, and why. */

import { isMulticast } from '../standards/ipv4.ts';
import { isLinkLocalGroup } from '../standards/multicast.ts';
import type { Port, Stream } from '../site/model.ts';
import { loadOf } from './crossings.ts';
import type { Bridge, BridgeTree } from './bridge-tree.ts';
import type { Interface } from './interfaces.ts';
import { type Link, carries, far, outOf } from './link.ts';
import type { Network } from './network.ts';

export type Cause =
  /** The switch does not snoop, and floods. */
  | 'unsnooped'
  /** The switch snoops, and floods what nobody has joined. */
  | 'unregistered'
  /** The querier or a multicast router is that way. */
  | 'querier';

export interface Unwanted {
  readonly stream: Stream;
  readonly network: number;
  readonly cause: Cause;
  /** bit/s on the line, at peak. */
  readonly peak: number;
}

/** Of what a switch or access point sends out of a port. */
export function unwantedOn(network: Network, link: Link, out: Port): Unwanted[] {
  const { device } = out;
  if (device.kind !== 'switch' && device.kind !== 'access-point') return [];
  const found: Unwanted[] = [];
  for (const crossing of network.crossings.at(outOf(link, out))) {
    const { stream } = crossing;
    const { group } = stream;
    const rates = network.rates[stream.index];
    const entered = network.deliveries[stream.index]?.networks ?? [];
    if (group === undefined || rates === undefined || !isMulticast(group) || isLinkLocalGroup(group)) continue;
    const here = entered.filter((index) => carries(link, index) !== 'no');
    const [index] = here;
    if (index === undefined || here.some((at) => isWanted(network, network.tree(at), group, at, link, out))) continue;
    const bridge = network.tree(index).bridges.get(device);
    if (bridge === undefined) continue;
    const towardsQuerier = bridge.routerLinks.includes(link);
    // A router that forwards the group wants it.
    if (towardsQuerier && entered.length > 1) continue;
    const cause = towardsQuerier ? 'querier' : device.snooping ? 'unregistered' : 'unsnooped';
    found.push({ stream, network: index, cause, peak: loadOf(crossing, rates).line.peak });
  }
  return found;
}

function isWanted(network: Network, tree: BridgeTree, group: number, index: number, link: Link, out: Port): boolean {
  return network.memberships.members(group, index).some((member) => isBehind(tree, link, out, member));
}

/** Whether frames that leave by the port are on the way to a host. */
function isBehind(tree: BridgeTree, link: Link, out: Port, host: Interface): boolean {
  if (host.link === link) return host.port !== out;
  const from = tree.bridges.get(out.device);
  const beyond = tree.bridges.get(far(link, out).device);
  const at = tree.bridges.get(far(host.link, host.port).device);
  if (from === undefined || beyond === undefined || at === undefined || at.component !== from.component) return false;
  return beyond.up === link ? isBelow(at, beyond) : !isBelow(at, from);
}

function isBelow(bridge: Bridge, top: Bridge): boolean {
  let at: Bridge | undefined = bridge;
  while (at !== undefined && at.depth > top.depth) at = at.parent;
  return at === top;
}
