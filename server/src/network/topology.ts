/**
 * The wiring as a graph of ports: which link carries which VLAN, tagged or not, and which links spanning tree blocks.
 *
 * A port without VLANs on a device that forwards frames is transparent: it passes on what reaches it, as a switch
 * without management or a media converter does. What hangs together through transparent ports is a segment and has
 * the VLANs of the managed ports at its edge. Where no managed port is, the segment is a network of its own, and has
 * the VLAN whose subnet its hosts' addresses are in, if there is one.
 */

import { contains } from '../standards/ipv4.ts';
import { type Device, type Port, type Site, type Vlan, portAt } from '../site/model.ts';
import { type Link, NONE } from './link.ts';
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
  /** The declared VLANs in their order, then the others. */
  readonly networks: readonly Network[];
  readonly spanningTree: SpanningTree;
}

/** Whether frames pass a port as they come: no VLAN is set on it nor on any other port of its device. */
export function isTransparent(port: Port): boolean {
  return port.device.bridging && transparent(port.device);
}

const transparency = new WeakMap<Device, boolean>();

function transparent(device: Device): boolean {
  const known = transparency.get(device);
  if (known !== undefined) return known;
  const result = device.ports.every((port) => port.vlan === undefined && port.trunk === undefined && port.native === undefined);
  transparency.set(device, result);
  return result;
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
      index: links.length, cable, a, b, capacity: slower(a.speed, b.speed), untagged: NONE, tagged: [], blocked: undefined,
    };
    linkOf[a.index] = link;
    linkOf[b.index] = link;
    links.push(link);
  }
  const networks: Network[] = site.vlans.map((vlan, index) => ({ index, vlan, name: vlan.name }));
  assignNetworks(site, links, networks);
  return { links, linkOf, networks, spanningTree: spanningTreeOf(site, links) };
}

function slower(a: number | undefined, b: number | undefined): number | undefined {
  if (a === undefined || b === undefined) return a ?? b;
  return Math.min(a, b);
}

/** What a port that has VLANs of its own sends and takes. */
interface Membership {
  readonly untagged: number;
  readonly tagged: readonly number[];
}

const NO_NETWORK: Membership = { untagged: NONE, tagged: [] };

function assignNetworks(site: Site, links: readonly Link[], networks: Network[]): void {
  const own = (port: Port): Membership => membershipOf(site, port);
  const segments = new Segments(site);
  for (const link of links) if (isTransparent(link.a) && isTransparent(link.b)) segments.join(link.a.device, link.b.device);
  for (const link of links) {
    // What a segment carries is what the managed ports at its edge send into it.
    if (isTransparent(link.a) !== isTransparent(link.b)) {
      const [inner, outer] = isTransparent(link.a) ? [link.a, link.b] : [link.b, link.a];
      if (outer.device.bridging) segments.add(inner.device, own(outer));
      else segments.addHost(inner.device, outer);
    }
  }
  const alone = (hosts: readonly Port[], name: string): Membership => {
    const vlan = vlanOfHosts(site, hosts);
    if (vlan !== undefined) return { untagged: vlan.index, tagged: [] };
    networks.push({ index: networks.length, vlan: undefined, name });
    return { untagged: networks.length - 1, tagged: [] };
  };
  const inSegment = (device: Device): Membership =>
    segments.membership(device, (hosts) => alone(hosts, `the network of ${device.name}`));

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
  }
}

const memberships = new WeakMap<Port, { site: ReadonlyMap<string, Vlan>; membership: Membership }>();

function membershipOf(site: Site, port: Port): Membership {
  if (port.vlan === undefined && port.trunk === undefined && port.native === undefined) return NO_NETWORK;
  const index = (name: string | undefined): number => (name === undefined ? NONE : (site.vlanByName.get(name)?.index ?? NONE));
  if (port.trunk === undefined) return { untagged: index(port.vlan ?? port.native), tagged: [] };
  const known = memberships.get(port);
  if (known?.site === site.vlanByName) return known.membership;
  const untagged = index(port.native ?? port.vlan);
  const tagged = [...new Set(port.trunk.map(index))].filter((network) => network !== NONE && network !== untagged);
  const membership = { untagged, tagged };
  memberships.set(port, { site: site.vlanByName, membership });
  return membership;
}

/** Between two ports with VLANs a frame passes where both mean the same by its tag, or by its lack of one. */
function agreed(a: Membership, b: Membership): Membership {
  if (a.tagged.length === 0 && b.tagged.length === 0) return a.untagged === b.untagged ? a : NO_NETWORK;
  return {
    untagged: a.untagged === b.untagged ? a.untagged : NONE,
    tagged: a.tagged.filter((network) => b.tagged.includes(network)),
  };
}

/** A host is in the VLAN of the port it is cabled to, and in those tagged ones that it has a trunk for. */
function atHost(wire: Membership, host: Membership): Membership {
  if (host.tagged.length === 0) return wire.tagged.length === 0 ? wire : { untagged: wire.untagged, tagged: [] };
  return { untagged: wire.untagged, tagged: wire.tagged.filter((network) => host.tagged.includes(network)) };
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

/** Transparent devices that hang together, as sets that are merged (union–find). */
class Segments {
  private readonly parent: Int32Array;
  private readonly untagged = new Map<number, number>();
  private readonly tagged = new Map<number, Set<number>>();
  private readonly hosts = new Map<number, Port[]>();
  private readonly known = new Map<number, Membership>();

  constructor(site: Site) {
    this.parent = Int32Array.from(site.devices, (_, index) => index);
  }

  private rootOf(device: number): number {
    let root = device;
    while (this.parent[root] !== root) root = this.parent[root] ?? root;
    for (let at = device; at !== root; ) {
      const next = this.parent[at] ?? root;
      this.parent[at] = root;
      at = next;
    }
    return root;
  }

  join(a: Device, b: Device): void {
    this.parent[this.rootOf(a.index)] = this.rootOf(b.index);
  }

  add(device: Device, edge: Membership): void {
    const root = this.rootOf(device.index);
    if (edge.untagged !== NONE && !this.untagged.has(root)) this.untagged.set(root, edge.untagged);
    if (edge.tagged.length === 0) return;
    const tagged = this.tagged.get(root) ?? new Set<number>();
    for (const network of edge.tagged) tagged.add(network);
    this.tagged.set(root, tagged);
  }

  addHost(device: Device, host: Port): void {
    const root = this.rootOf(device.index);
    const hosts = this.hosts.get(root);
    if (hosts === undefined) this.hosts.set(root, [host]);
    else hosts.push(host);
  }

  membership(device: Device, alone: (hosts: readonly Port[]) => Membership): Membership {
    const root = this.rootOf(device.index);
    let known = this.known.get(root);
    if (known === undefined) {
      const untagged = this.untagged.get(root);
      const tagged = this.tagged.get(root);
      known = untagged === undefined && tagged === undefined
        ? alone(this.hosts.get(root) ?? [])
        : { untagged: untagged ?? NONE, tagged: [...(tagged ?? [])].filter((network) => network !== untagged) };
      this.known.set(root, known);
    }
    return known;
  }
}
