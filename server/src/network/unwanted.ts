/** What multicast crosses a link although nobody behind it has asked for it, and why. */

import { isMulticast } from '../standards/ipv4.ts';
import { isLinkLocalGroup } from '../standards/multicast.ts';
import type { Port, Stream } from '../site/model.ts';
import { type Bridge, type BridgeTree, bridgeBeyond } from './bridge-tree.ts';
import type { Interface } from './interfaces.ts';
import { type Link, far, outOf, sentBy } from './link.ts';
import { NONE } from './membership.ts';
import type { Network } from './network.ts';

export type Cause =
  /** The switch does not snoop, and floods. */
  | 'unsnooped'
  /** The switch snoops, and floods what nobody has joined. */
  | 'unregistered'
  /** The querier or a multicast router is that way. */
  | 'querier';

/** `peak` is in bit/s on the line. */
export type Visit = (stream: Stream, network: number, cause: Cause, peak: number) => void;

/**
 * Of what a switch or access point sends out of a port. A link may carry thousands of streams, so nothing is kept of
 * them.
 */
export function visitUnwanted(network: Network, link: Link, out: Port, visit: Visit): void {
  if (out.device.kind !== 'switch' && out.device.kind !== 'access-point') return;
  const sent = sentGroups(network);
  const { untagged, tagged } = sentBy(link, out);
  const networks = untagged === NONE ? tagged : [untagged, ...tagged];
  const here = new Map(networks.map((index) => [index, causeOf(network, link, out, index)]));
  for (const crossing of network.crossings.at(outOf(link, out))) {
    const { stream } = crossing;
    const group = sent[stream.index];
    const rates = network.rates[stream.index];
    if (group === undefined || rates === undefined) continue;
    let found: Cause | undefined;
    let foundIn = NONE;
    let wanted = false;
    for (const { index, members } of group) {
      const cause = here.get(index);
      if (cause === undefined) continue;
      found ??= cause;
      if (foundIn === NONE) foundIn = index;
      for (const member of members) wanted ||= isBehind(network.tree(index), link, out, member);
    }
    // A router that forwards the group wants it.
    if (found === undefined || wanted || (found === 'querier' && group.length > 1)) continue;
    visit(
      stream,
      foundIn,
      found,
      crossing.untagged * rates.untagged.line.peak + crossing.tagged * rates.tagged.line.peak,
    );
  }
}

type SentGroup = readonly { readonly index: number; readonly members: readonly Interface[] }[];

/** By the deliveries that they follow from: a view of the network outlives an edit. */
const known = new WeakMap<Network['deliveries'], readonly (SentGroup | undefined)[]>();

/** By stream: the networks that its group is sent into, with those who joined it there. */
function sentGroups(network: Network): readonly (SentGroup | undefined)[] {
  let sent = known.get(network.deliveries);
  if (sent === undefined) {
    sent = network.deliveries.map(({ stream: { group }, networks }) => {
      if (group === undefined || !isMulticast(group) || isLinkLocalGroup(group)) return undefined;
      return networks.map((index) => ({ index, members: network.memberships.members(group, index) }));
    });
    known.set(network.deliveries, sent);
  }
  return sent;
}

/** Why a group that nobody behind the link wants is sent there. */
function causeOf(network: Network, link: Link, { device }: Port, index: number): Cause | undefined {
  const bridge = network.tree(index).bridges.get(device);
  if (bridge === undefined) return undefined;
  if (bridge.routerLinks.includes(link)) return 'querier';
  return device.snooping ? 'unregistered' : 'unsnooped';
}

/** Whether frames that leave by the port are on the way to a host. */
function isBehind(tree: BridgeTree, link: Link, out: Port, host: Interface): boolean {
  if (host.link === link) return host.port !== out;
  const from = tree.bridges.get(out.device);
  const beyond = from === undefined ? undefined : bridgeBeyond(tree, from, link);
  const at = tree.bridges.get(far(host.link, host.port).device);
  if (from === undefined || beyond === undefined || at === undefined || at.component !== from.component) return false;
  return beyond.up === link ? isBelow(at, beyond) : !isBelow(at, from);
}

function isBelow(bridge: Bridge, top: Bridge): boolean {
  let at: Bridge | undefined = bridge;
  while (at !== undefined && at.depth > top.depth) at = at.parent;
  return at === top;
}
