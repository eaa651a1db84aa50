/**
 * The wiring as a graph of ports: which link carries which VLAN, tagged or not, and which links spanning tree blocks.
 *
 * A port without VLANs on a device that forwards frames is transparent: it passes on what reaches it, as a switch
 * without management or a media converter does. What hangs together through transparent ports is a segment and has
 * the VLANs of the managed ports at its edge. Where no managed port is, the segment is a network of its own, and has
 * the VLAN whose subnet its hosts' addresses are in, if there is one.
 */

import { contains } from '../standards/ipv4.ts';
import { type Cable, type Device, type Port, type Site, type Vlan, portAt } from '../site/model.ts';
import type { Link } from './link.ts';
import { type Membership, NONE, NO_NETWORK, agreed, atHost, membershipOf } from './membership.ts';
import { type Segment, carriedIn, isTransparent, segmentsOf } from './segments.ts';
import { type SpanningTree, spanningTreeOf } from './spanning-tree.ts';

/** A broadcast domain: a declared VLAN, or a wiring of its own that bears no VLAN. */
export interface Network {
  readonly index: number;
  readonly vlan: Vlan | undefined;
  readonly name: string;
}

export interface Topology {
  readonly links: readonly Link[];
  /** By port index. A port that is cabled twice has its first cable here. */
  readonly linkOf: readonly (Link | undefined)[];
  /** The link at a port; `undefined` where none is cabled there. */
  linkAt(port: Port): Link | undefined;
  /** The declared VLANs in their order, then the others. */
  readonly networks: readonly Network[];
  /** By transparent device, where it is cabled. */
  readonly segments: ReadonlyMap<Device, Segment>;
  readonly spanningTree: SpanningTree;
}

export function topologyOf(site: Site): Topology {
  const links: Link[] = [];
  const linkOf = new Array<Link | undefined>(site.ports.length);
  for (const cable of site.cables) {
    const a = portAt(site, cable.from);
    const b = portAt(site, cable.to);
    if (a === undefined || b === undefined || a.device === b.device) continue;
    if (a.device.kind === 'patch-panel' || b.device.kind === 'patch-panel') continue;
    // A port takes one plug; the rules tell of a second.
    if (linkOf[a.index] !== undefined || linkOf[b.index] !== undefined) continue;
    const link: Link = {
      index: links.length,
      cable,
      a,
      b,
      capacity: slower(a.speed, b.speed),
      untagged: NONE,
      tagged: [],
      fromA: NO_NETWORK,
      fromB: NO_NETWORK,
      blocked: undefined,
    };
    linkOf[a.index] = link;
    linkOf[b.index] = link;
    links.push(link);
  }
  const networks: Network[] = site.vlans.map((vlan, index) => ({ index, vlan, name: vlan.name }));
  const segments = segmentsOf(site, links);
  assignNetworks(site, links, segments, networks);
  return {
    links,
    linkOf,
    linkAt: (port) => linkOf[port.index],
    networks,
    segments,
    spanningTree: spanningTreeOf(site, links),
  };
}

/**
 * The same links between the same ports, with the cables and speeds that they have now; `before` is out of date then.
 */
export function relabelled(before: Topology, cables: readonly Cable[]): Topology {
  for (const link of before.links) {
    link.cable = cables[link.cable.index] ?? link.cable;
    link.capacity = slower(link.a.speed, link.b.speed);
  }
  return { ...before };
}

function slower(a: number | undefined, b: number | undefined): number | undefined {
  if (a === undefined || b === undefined) return a ?? b;
  return Math.min(a, b);
}

function assignNetworks(
  site: Site,
  links: readonly Link[],
  segments: ReadonlyMap<Device, Segment>,
  networks: Network[],
): void {
  const own = (port: Port): Membership => membershipOf(site, port);
  const alone = (hosts: readonly Port[], name: string): Membership => {
    const vlan = vlanOfHosts(site, hosts);
    if (vlan !== undefined) return { untagged: vlan.index, tagged: [] };
    networks.push({ index: networks.length, vlan: undefined, name });
    return { untagged: networks.length - 1, tagged: [] };
  };
  const known = new Map<Segment, Membership>();
  const inSegment = (device: Device): Membership => {
    const segment = segments.get(device);
    if (segment === undefined) return NO_NETWORK;
    let carried = known.get(segment);
    if (carried !== undefined) return carried;
    carried = carriedIn(site, segment);
    if (carried.untagged === NONE && carried.tagged.length === 0) {
      carried = alone(
        segment.hosts.map(({ port }) => port),
        `the network of ${device.name}`,
      );
    }
    known.set(segment, carried);
    return carried;
  };

  for (const link of links) {
    const { a, b } = link;
    const aPasses = isTransparent(a);
    const bPasses = isTransparent(b);
    let carried: Membership;
    if (aPasses && bPasses) carried = inSegment(a.device);
    else if (aPasses || bPasses) {
      const [inner, outer] = aPasses ? [a, b] : [b, a];
      const segment = inSegment(inner.device);
      carried = outer.device.bridging ? own(outer) : atHost(segment, own(outer));
    } else if (a.device.bridging && b.device.bridging) carried = agreed(own(a), own(b));
    else if (a.device.bridging) carried = atHost(own(a), own(b));
    else if (b.device.bridging) carried = atHost(own(b), own(a));
    else carried = alone([a, b], `the link ${a.device.name} – ${b.device.name}`);
    link.untagged = carried.untagged;
    link.tagged = carried.tagged;
    const sent = (port: Port): Membership => {
      if (!port.device.bridging) return carried;
      return isTransparent(port) ? inSegment(port.device) : own(port);
    };
    link.fromA = sent(a);
    link.fromB = sent(b);
  }
}

/** The VLAN whose subnet holds the hosts' addresses, where they agree on one. */
function vlanOfHosts(site: Site, hosts: readonly Port[]): Vlan | undefined {
  let found: Vlan | undefined;
  for (const host of hosts) {
    for (const { address } of host.addresses) {
      const vlan = site.vlans.find(({ subnet }) => subnet !== undefined && contains(subnet, address));
      if (vlan === undefined) continue;
      if (found !== undefined && found !== vlan) return undefined;
      found = vlan;
    }
  }
  return found;
}
