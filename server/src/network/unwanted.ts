/** Multicast that crosses a link although no host behind it has joined it, and why. */

import { isMulticast } from '../standards/ipv4.ts';
import { isLinkLocalGroup } from '../standards/multicast.ts';
import type { Device, Port, Stream } from '../site/model.ts';
import { type Bridge, type BridgeTree, bridgeBeyond, bridgeOf } from './bridge-tree.ts';
import type { Interface } from './interface.ts';
import { type Link, oppositePort, domainsSentBy } from './link.ts';
import { type BroadcastDomain, domainsOf } from './vlan-membership.ts';
import type { Network } from './network.ts';

export type FloodingCause =
  /** The switch does not snoop, and floods. */
  | 'unsnooped'
  /** The switch snoops, and floods groups that nobody has joined, or all groups while there is no querier. */
  | 'unregistered'
  /** The querier or a multicast router is in that direction. */
  | 'querier';

/** `peak` is in bit/s on the line. */
export type VisitUnwanted = (stream: Stream, domain: BroadcastDomain, cause: FloodingCause, peak: number) => void;

/**
 * Calls `visit` for each such stream that a switch, an access point or the sockets of a router send out of a port. A
 * link may carry thousands of streams, so no list is made.
 */
export function visitUnwanted(network: Network, link: Link, out: Port, visit: VisitUnwanted): void {
  if (!out.forwards || out.device.kind === 'media-converter') return;
  const sent = new Map(
    domainsOf(domainsSentBy(link, out)).flatMap((domain) => {
      const bridge = network.tree(domain).bridges.get(out.device);
      return bridge === undefined ? [] : [[domain, causeOf(bridge, link)] as const];
    }),
  );
  const screens = new Map<Device, number>();
  const chosen: Parameters<VisitUnwanted>[] = [];
  for (const copies of network.copies(link, out)) {
    const { stream } = copies;
    const { group } = stream;
    if (group === undefined || !isMulticast(group) || isLinkLocalGroup(group)) continue;
    const { domains } = network.delivery(stream);
    const first = domains.find((domain) => sent.has(domain));
    const cause = first === undefined ? undefined : sent.get(first);
    if (first === undefined || cause === undefined) continue;
    const behind = domains.flatMap((domain) =>
      sent.has(domain)
        ? network.memberships
            .members(group, domain)
            .filter((member) => isBehind(network.tree(domain), link, out, member))
        : [],
    );
    const isChosen = behind.every(({ device }) => network.choices.decoders.has(device));
    // A router that forwards the group wants it.
    if (!isChosen || (cause === 'querier' && (behind.length > 0 || domains.length > 1))) continue;
    const { untagged, tagged } = network.rates(stream);
    const peak = copies.untagged * untagged.line.peak + copies.tagged * tagged.line.peak;
    if (behind.length === 0) visit(stream, first, cause, peak);
    else {
      for (const { device } of behind) screens.set(device, network.choices.decoders.get(device) ?? 0);
      chosen.push([stream, first, cause, peak]);
    }
  }
  // Screens that show some of their streams at a time want as many as they have decoders: the largest ones.
  const shown = [...screens.values()].reduce((sum, decoders) => sum + decoders, 0);
  for (const unshown of chosen.sort((a, b) => b[3] - a[3]).slice(shown)) visit(...unshown);
}

/** Why a bridge sends a group into a link with no member behind it. */
function causeOf(bridge: Bridge, link: Link): FloodingCause {
  if (bridge.routerLinks.includes(link)) return 'querier';
  return bridge.device.snooping ? 'unregistered' : 'unsnooped';
}

/** Whether a host is behind the link, seen from the port. */
function isBehind(tree: BridgeTree, link: Link, out: Port, host: Interface): boolean {
  if (host.link === link) return host.port !== out;
  const from = tree.bridges.get(out.device);
  const beyond = from === undefined ? undefined : bridgeBeyond(tree, from, link);
  const at = bridgeOf(tree, oppositePort(host.link, host.port));
  if (from === undefined || beyond === undefined || at === undefined || at.component !== from.component) return false;
  return beyond.up === link ? isBelow(at, beyond) : !isBelow(at, from);
}

function isBelow(bridge: Bridge, top: Bridge): boolean {
  let at: Bridge | undefined = bridge;
  while (at !== undefined && at.depth > top.depth) at = at.parent;
  return at === top;
}
