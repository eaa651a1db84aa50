/** Transparent segments: connected devices without VLANs of their own, which pass on every frame. */

import { perObject } from '../memo.ts';
import type { Device, Port } from '../site/model.ts';
import type { PhysicalLink } from './link.ts';
import { type BroadcastDomain, type VlanMembership, hasVlans } from './vlan-membership.ts';

/** A port that is cabled to a device of a segment. */
export interface SegmentEnd<J extends PhysicalLink> {
  readonly link: J;
  readonly port: Port;
}

export interface TransparentSegment<J extends PhysicalLink> {
  readonly devices: readonly Device[];
  /** Ports of devices that have VLANs: the segment carries what these send into it. */
  readonly edges: readonly SegmentEnd<J>[];
  readonly hosts: readonly SegmentEnd<J>[];
}

/** Whether frames pass a port unchanged: neither it nor any other port of its device has a VLAN. */
export function isTransparent(port: Port): boolean {
  return port.forwards && isWithoutVlans(port.device);
}

const isWithoutVlans = perObject((device: Device) => !device.ports.some((port) => port.forwards && hasVlans(port)));

/**
 * The segment of each transparent device that is cabled.
 *
 * @param working the links that have not failed; hosts at failed ones still show which network they are in
 */
export function transparentSegments<J extends PhysicalLink>(
  links: readonly J[],
  working: ReadonlySet<J> = new Set(links),
): Map<Device, TransparentSegment<J>> {
  const sets = new Sets<Device>();
  for (const link of links)
    if (working.has(link) && isTransparent(link.a) && isTransparent(link.b)) sets.join(link.a.device, link.b.device);
  const byRoot = new Map<Device, { devices: Device[]; edges: SegmentEnd<J>[]; hosts: SegmentEnd<J>[] }>();
  const found = new Map<Device, TransparentSegment<J>>();
  const at = (device: Device): { edges: SegmentEnd<J>[]; hosts: SegmentEnd<J>[] } => {
    const root = sets.rootOf(device);
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
      if (!port.forwards) segment.hosts.push({ link, port });
      else if (!isTransparent(port)) segment.edges.push({ link, port });
    }
  }
  return found;
}

/** The VLANs that a segment with edges carries. The first of several untagged ones counts; rules report the others. */
export function carriedIn<J extends PhysicalLink>(
  segment: TransparentSegment<J>,
  membership: (port: Port) => VlanMembership,
): VlanMembership {
  let untagged: BroadcastDomain | undefined;
  const tagged = new Set<BroadcastDomain>();
  for (const { port } of segment.edges) {
    const atEdge = membership(port);
    untagged ??= atEdge.untagged;
    for (const domain of atEdge.tagged) tagged.add(domain);
  }
  if (untagged !== undefined) tagged.delete(untagged);
  return { untagged, tagged: [...tagged] };
}

/** Disjoint sets that are merged (union–find). */
class Sets<T> {
  private readonly parent = new Map<T, T>();

  rootOf(member: T): T {
    let root = member;
    for (let next = this.parent.get(root); next !== undefined; next = this.parent.get(root)) root = next;
    for (let at = member; at !== root;) {
      const next = this.parent.get(at) ?? root;
      this.parent.set(at, root);
      at = next;
    }
    return root;
  }

  join(a: T, b: T): void {
    const [rootA, rootB] = [this.rootOf(a), this.rootOf(b)];
    if (rootA !== rootB) this.parent.set(rootA, rootB);
  }
}
