/** Segments: devices without VLANs of their own that hang together and pass on what reaches them. */

import type { Device, Port, Site } from '../site/model.ts';
import type { Link } from './link.ts';
import { type Membership, NONE, hasVlans, membershipOf } from './membership.ts';

/** A port that is cabled to a device of a segment. */
export interface SegmentEnd {
  readonly link: Link;
  readonly port: Port;
}

export interface Segment {
  readonly devices: readonly Device[];
  /** Ports of devices that have VLANs: what these send into the segment is what it carries. */
  readonly edges: readonly SegmentEnd[];
  readonly hosts: readonly SegmentEnd[];
}

/** Whether frames pass a port as they come: no VLAN is set on it nor on any other port of its device. */
export function isTransparent(port: Port): boolean {
  return port.device.bridging && withoutVlans(port.device);
}

const known = new WeakMap<Device, boolean>();

function withoutVlans(device: Device): boolean {
  let result = known.get(device);
  if (result === undefined) known.set(device, (result = !device.ports.some(hasVlans)));
  return result;
}

/** The segment of each transparent device that is cabled. */
export function segmentsOf(site: Site, links: readonly Link[]): Map<Device, Segment> {
  const sets = new Sets(site.devices.length);
  for (const { a, b } of links) if (isTransparent(a) && isTransparent(b)) sets.join(a.device.index, b.device.index);
  const byRoot = new Map<number, { devices: Device[]; edges: SegmentEnd[]; hosts: SegmentEnd[] }>();
  const found = new Map<Device, Segment>();
  const at = (device: Device): { edges: SegmentEnd[]; hosts: SegmentEnd[] } => {
    const root = sets.rootOf(device.index);
    let segment = byRoot.get(root);
    if (segment === undefined) byRoot.set(root, (segment = { devices: [], edges: [], hosts: [] }));
    if (!found.has(device)) segment.devices.push(device);
    found.set(device, segment);
    return segment;
  };
  for (const link of links) {
    for (const [inner, port] of [
      [link.a, link.b],
      [link.b, link.a],
    ] as const) {
      if (!isTransparent(inner)) continue;
      const segment = at(inner.device);
      if (!port.device.bridging) segment.hosts.push({ link, port });
      else if (!isTransparent(port)) segment.edges.push({ link, port });
    }
  }
  return found;
}

/** What a segment with edges carries. Of several VLANs without a tag the first counts; the rules tell of the others. */
export function carriedIn(site: Site, segment: Segment): Membership {
  let untagged = NONE;
  const tagged = new Set<number>();
  for (const { port } of segment.edges) {
    const own = membershipOf(site, port);
    if (untagged === NONE) untagged = own.untagged;
    for (const network of own.tagged) tagged.add(network);
  }
  tagged.delete(untagged);
  return { untagged, tagged: [...tagged] };
}

/** Disjoint sets that are merged (union–find). */
class Sets {
  private readonly parent: Int32Array;

  constructor(size: number) {
    this.parent = Int32Array.from({ length: size }, (_, index) => index);
  }

  rootOf(member: number): number {
    let root = member;
    while (this.parent[root] !== root) root = this.parent[root] ?? root;
    for (let at = member; at !== root;) {
      const next = this.parent[at] ?? root;
      this.parent[at] = root;
      at = next;
    }
    return root;
  }

  join(a: number, b: number): void {
    this.parent[this.rootOf(a)] = this.rootOf(b);
  }
}
