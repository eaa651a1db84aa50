/**
 * The wiring as a graph of ports: which link carries which VLAN, tagged or not, and which links spanning tree blocks.
 *
 * A port without VLANs on a device that forwards frames is transparent: it passes on what reaches it, as a switch
 * without management or a media converter does. Devices connected through transparent ports are a segment, which has
 * the VLANs of the managed ports at its edge. Without a managed port, the segment is a broadcast domain of its own, and
 * has the VLAN whose subnet its hosts' addresses are in, if there is one.
 */

import { perObject } from '../memo.ts';
import { contains } from '../standards/ipv4.ts';
import { type Cable, type CableEnd, type Device, type Port, type Vlan, addressesAt, portAt } from '../site/model.ts';
import { type AddressUse, addressUses } from './address-uses.ts';
import { aggregatedLinks } from './aggregation.ts';
import { type Failed, hasFailed } from './failed.ts';
import { type BridgeTree, type DeadEnd, bridgeTree } from './bridge-tree.ts';
import { querierCandidates } from './querier-candidates.ts';
import { insideLinks } from './inside-links.ts';
import { Interfaces } from './interfaces.ts';
import { type PhysicalLink, type Link, type MemberLink, cablesOf, taggingOf, domainsSentBy } from './link.ts';
import {
  type BroadcastDomain,
  type VlanMembership,
  NO_DOMAIN,
  agreed,
  atHost,
  domainsOf,
  tagsAll,
  vlanMembershipOf,
} from './vlan-membership.ts';
import { type TransparentSegment, carriedIn, isTransparent, transparentSegments } from './transparent-segments.ts';
import { spanningTreeOf } from './spanning-tree.ts';

/** The parts of a site that decide its wiring. */
export interface Wired {
  readonly vlans: readonly Vlan[];
  readonly devices: readonly Device[];
  readonly deviceByName: ReadonlyMap<string, Device>;
  readonly cables: readonly Cable[];
  /** `undefined` where nothing has failed. */
  readonly failed?: Failed | undefined;
}

export interface Topology {
  readonly links: readonly Link[];
  /** The links inside devices that both route and forward frames; `a` is the switching side, `b` the routing side. */
  readonly inside: readonly Link[];
  /** The link at a port. A port that is cabled twice has its first cable here; aggregated ports have the same link. */
  readonly linkAt: (port: Port) => Link | undefined;
  /** The declared VLANs in their order, then the others. */
  readonly domains: readonly BroadcastDomain[];
  readonly domainOf: (vlan: Vlan) => BroadcastDomain;
  /** The VLANs that a port itself declares; an undeclared VLAN counts as none. */
  readonly vlanMembershipOf: (port: Port) => VlanMembership;
  /** The segments by transparent device, if it is cabled. */
  readonly segments: ReadonlyMap<Device, TransparentSegment<Link>>;
  readonly spanningTree: {
    /** One for each group of connected bridges. */
    readonly roots: readonly Device[];
    readonly blocked: readonly Link[];
  };
}

export interface Wiring {
  readonly site: Wired;
  readonly topology: Topology;
  readonly interfaces: Interfaces;
  readonly addressUses: readonly AddressUse[];
  /** In the order of choice among several on equal paths. */
  readonly routers: readonly Device[];
  readonly multicastRouters: readonly Device[];
  /** The bridges of a broadcast domain. */
  readonly tree: (domain: BroadcastDomain) => BridgeTree;
}

export function wiringOf(site: Wired): Wiring {
  const topology = topologyOf(site);
  const interfaces = new Interfaces(site, topology);
  const routers = inOrderOfChoice(
    site.devices.filter((device) => device.routing && site.failed?.devices.has(device) !== true),
  );
  const multicastRouters = routers.filter(({ multicastRouting }) => multicastRouting);
  const linksOf = linksByDomain(topology);
  const deadEndsOf = deadEndsByDomain(topology);
  const tree = perObject((domain: BroadcastDomain) => {
    const name = domain.vlan?.querier;
    const named = name === undefined ? undefined : site.deviceByName.get(name);
    return bridgeTree({
      domain,
      links: linksOf.get(domain) ?? [],
      deadEnds: deadEndsOf.get(domain) ?? [],
      named,
      askers: querierCandidates(domain, named, multicastRouters, interfaces),
    });
  });
  const uses = addressUses(site, topology.linkAt);
  return { site, topology, interfaces, addressUses: uses, routers, multicastRouters, tree };
}

function topologyOf(site: Wired): Topology {
  const cabled = physicalLinksOf(site);
  const inside = insideLinks(site);
  const physicalLinks = [...cabled, ...inside];
  const working =
    site.failed === undefined ? physicalLinks : physicalLinks.filter((physical) => !isLost(site, physical));
  const segments = transparentSegments(physicalLinks, new Set(working));
  const { domains, byName, own, crossing } = domainsOn(site, segments);
  const { roots, blocked } = spanningTreeOf(
    site.devices,
    site.failed === undefined ? cabled : cabled.filter((physical) => !isLost(site, physical)),
  );

  const linkOf = new Map<PhysicalLink, Link>();
  const linkByPort = new Map<Port, Link>();
  for (const physical of physicalLinks) {
    const failed = isLost(site, physical);
    const link: Link = {
      blocked: failed ? physical.a : blocked.get(physical),
      failed,
      ...physical,
      ...crossing(physical),
    };
    linkOf.set(physical, link);
    for (const { a, b } of cablesOf(physical)) linkByPort.set(a, link).set(b, link);
  }
  const all = [...linkOf.values()];
  const links = all.slice(0, cabled.length);
  return {
    links,
    inside: all.slice(cabled.length),
    linkAt: (port) => linkByPort.get(port),
    domains,
    domainOf: (vlan) => {
      const domain = byName.get(vlan.name);
      if (domain === undefined) throw new Error(`${vlan.name} is not a VLAN of this site`);
      return domain;
    },
    vlanMembershipOf: own,
    segments: withLinks(segments, linkOf),
    spanningTree: { roots, blocked: links.filter((link) => link.blocked !== undefined && !link.failed) },
  };
}

function isLost({ failed }: Wired, { members }: PhysicalLink): boolean {
  return failed !== undefined && members.every((member) => hasFailed(failed, member));
}

/** The links that the cables make. */
function physicalLinksOf({ deviceByName, cables, failed }: Wired): PhysicalLink[] {
  const joined: MemberLink[] = [];
  const taken = new Set<Port>();
  const at = (end: CableEnd | undefined): Port | undefined => portAt({ deviceByName }, end);
  for (const cable of cables) {
    const a = at(cable.from);
    const b = at(cable.to);
    if (a === undefined || b === undefined || a.device === b.device) continue;
    if (a.device.kind === 'patch-panel' || b.device.kind === 'patch-panel') continue;
    // A port takes one plug; the rules report a second.
    if (taken.has(a) || taken.has(b)) continue;
    taken.add(a).add(b);
    joined.push({ cable, a, b, capacity: slower(a.speed, b.speed) });
  }
  if (failed === undefined) return aggregatedLinks(joined);
  // An aggregated link carries on with the cables that are left.
  const working = aggregatedLinks(joined.filter((member) => !hasFailed(failed, member)));
  const isLeft = ({ a, b }: PhysicalLink): boolean =>
    (a.lag ?? b.lag) !== undefined &&
    working.some((physical) =>
      [physical.a, physical.b].every(({ device, lag }) =>
        [a, b].some((end) => end.device === device && end.lag === lag),
      ),
    );
  const lost = aggregatedLinks(joined.filter((member) => hasFailed(failed, member))).filter(
    (physical) => !isLeft(physical),
  );
  const order = new Map(joined.map(({ cable }, index) => [cable, index]));
  return [...working, ...lost].sort((a, b) => (order.get(a.cable) ?? 0) - (order.get(b.cable) ?? 0));
}

function slower(a: number | undefined, b: number | undefined): number | undefined {
  if (a === undefined || b === undefined) return a ?? b;
  return Math.min(a, b);
}

interface Domains {
  readonly domains: readonly BroadcastDomain[];
  /** The declared VLANs, by name. */
  readonly byName: ReadonlyMap<string, BroadcastDomain>;
  readonly own: (port: Port) => VlanMembership;
  readonly crossing: (
    physical: PhysicalLink,
  ) => VlanMembership & { readonly fromA: VlanMembership; readonly fromB: VlanMembership };
}

/** The domains of declared VLANs, and which of them each port declares. */
const declaredBy = perObject((vlans: readonly Vlan[]): Pick<Domains, 'byName' | 'own'> => {
  const byName = new Map(vlans.map((vlan) => [vlan.name, { vlan, name: vlan.name }]));
  return { byName, own: perObject((port: Port) => vlanMembershipOf(port, byName)) };
});

function domainsOn(site: Wired, segments: ReadonlyMap<Device, TransparentSegment<PhysicalLink>>): Domains {
  const { byName, own } = declaredBy(site.vlans);
  const domains: BroadcastDomain[] = [...byName.values()];
  const ofHosts = (hosts: readonly Port[], name: string): VlanMembership => {
    const vlan = vlanOfHosts(site.vlans, hosts);
    const declared = namedBy(hosts, own) ?? (vlan === undefined ? undefined : byName.get(vlan.name));
    const domain = declared ?? { vlan: undefined, name };
    if (declared === undefined) domains.push(domain);
    return { untagged: domain, tagged: [] };
  };
  const bySegment = new Map<TransparentSegment<PhysicalLink>, VlanMembership>();
  const inSegment = (device: Device): VlanMembership => {
    const segment = segments.get(device);
    if (segment === undefined) return NO_DOMAIN;
    const before = bySegment.get(segment);
    if (before !== undefined) return before;
    const byEdges = carriedIn(segment, own);
    const plain = segment.hosts.flatMap(({ port }) => (tagsAll(own(port)) ? [] : [port]));
    // Where all ports with VLANs tag them, the hosts without VLANs are a domain of their own.
    const isPlain = byEdges.untagged === undefined && (plain.length > 0 || byEdges.tagged.length === 0);
    const { untagged } = isPlain ? ofHosts(plain, `the network of ${device.name}`) : byEdges;
    const tagged = byEdges.tagged.filter((domain) => domain !== untagged);
    const carried = { untagged, tagged };
    bySegment.set(segment, carried);
    return carried;
  };
  const carriedBy = ({ a, b }: PhysicalLink): VlanMembership => {
    const aPasses = isTransparent(a);
    const bPasses = isTransparent(b);
    if (aPasses && bPasses) return inSegment(a.device);
    if (aPasses || bPasses) {
      const [inner, outer] = aPasses ? [a, b] : [b, a];
      const segment = inSegment(inner.device);
      return outer.forwards ? inAndOut(segment, own(outer)) : atHost(segment, own(outer));
    }
    if (a.forwards && b.forwards) return agreed(own(a), own(b));
    if (a.forwards) return atHost(own(a), own(b));
    if (b.forwards) return atHost(own(b), own(a));
    return ofHosts([a, b], `the link ${a.device.name} – ${b.device.name}`);
  };
  const sent = (port: Port, carried: VlanMembership): VlanMembership => {
    if (!port.forwards) return carried;
    return isTransparent(port) ? inSegment(port.device) : own(port);
  };
  const crossing = (physical: PhysicalLink): ReturnType<Domains['crossing']> => {
    const carried = carriedBy(physical);
    const { untagged, tagged } = carried;
    return { untagged, tagged, fromA: sent(physical.a, carried), fromB: sent(physical.b, carried) };
  };
  return { domains, byName, own, crossing };
}

/** The VLANs that pass between a segment and a port: the segment's untagged VLAN does not pass with a tag. */
function inAndOut({ untagged }: VlanMembership, own: VlanMembership): VlanMembership {
  return untagged === undefined || !own.tagged.includes(untagged)
    ? own
    : { untagged: own.untagged, tagged: own.tagged.filter((domain) => domain !== untagged) };
}

/** The VLAN that the hosts' ports declare, where they agree on one; the leg of a router may. */
function namedBy(hosts: readonly Port[], own: Domains['own']): BroadcastDomain | undefined {
  const named = new Set(hosts.flatMap((host) => own(host).untagged ?? []));
  const [only, another] = named;
  return another === undefined ? only : undefined;
}

/** The VLAN whose subnet holds the hosts' addresses, where they agree on one. */
function vlanOfHosts(vlans: readonly Vlan[], hosts: readonly Port[]): Vlan | undefined {
  let found: Vlan | undefined;
  for (const host of hosts) {
    for (const { address } of addressesAt(host)) {
      const vlan = vlans.find(({ subnet }) => subnet !== undefined && contains(subnet, address));
      if (vlan === undefined) continue;
      if (found !== undefined && found !== vlan) return undefined;
      found = vlan;
    }
  }
  return found;
}

function withLinks(
  segments: ReadonlyMap<Device, TransparentSegment<PhysicalLink>>,
  linkOf: ReadonlyMap<PhysicalLink, Link>,
): Map<Device, TransparentSegment<Link>> {
  const ends = (of: TransparentSegment<PhysicalLink>['hosts']): TransparentSegment<Link>['hosts'] =>
    of.flatMap(({ link: physical, port }) => {
      const link = linkOf.get(physical);
      return link === undefined ? [] : [{ link, port }];
    });
  const whole = perObject(({ devices, edges, hosts }: TransparentSegment<PhysicalLink>) => ({
    devices,
    edges: ends(edges),
    hosts: ends(hosts),
  }));
  return new Map([...segments].map(([device, segment]) => [device, whole(segment)]));
}

/**
 * The router that forwards among several on equal paths is the one with the highest address, as in the assert of
 * multicast routers (RFC 7761 §4.6.1), then the one with the first name; their order in a file does not matter.
 */
function inOrderOfChoice(routers: readonly Device[]): Device[] {
  const highest = ({ ports, addresses: own }: Device): number =>
    Math.max(-1, ...[...own, ...ports.flatMap(({ addresses }) => addresses)].map(({ address }) => address));
  return [...routers].sort((a, b) => highest(b) - highest(a) || (a.name < b.name ? -1 : 1));
}

function linksByDomain({ links, inside }: Topology): Map<BroadcastDomain, Link[]> {
  const found = new Map<BroadcastDomain, Link[]>();
  for (const link of [...links, ...inside]) for (const domain of domainsOf(link)) append(found, domain, link);
  return found;
}

/** The directions, by domain, in which a port sends it into a link whose other end does not accept it. */
function deadEndsByDomain({ links }: Topology): Map<BroadcastDomain, DeadEnd[]> {
  const found = new Map<BroadcastDomain, DeadEnd[]>();
  for (const link of links) {
    for (const out of [link.a, link.b]) {
      if (!out.forwards || out === link.blocked || link.failed) continue;
      for (const domain of domainsOf(domainsSentBy(link, out))) {
        if (link.blocked !== undefined || taggingOf(link, domain) === 'no') append(found, domain, { link, out });
      }
    }
  }
  return found;
}

function append<K, V>(lists: Map<K, V[]>, key: K, value: V): void {
  const list = lists.get(key);
  if (list === undefined) lists.set(key, [value]);
  else list.push(value);
}
