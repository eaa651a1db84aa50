/** A link: two ports joined by a cable, or two groups of ports by several. */

import { NONE } from '../none.ts';
import type { Cable, Device, Port } from '../site/model.ts';
import type { BroadcastDomain, VlanMembership } from './vlan-membership.ts';

/** A cable between two ports. */
export interface MemberLink {
  readonly cable: Cable;
  /** The ends in the order of the cable. */
  readonly a: Port;
  readonly b: Port;
  /** bit/s: the slower end's speed; `undefined` where neither end declares one. */
  readonly capacity: number | undefined;
}

/** Two ports joined by one cable or several; its own cable and ports are those of the first. */
export interface PhysicalLink extends MemberLink {
  /** bit/s, all cables together. */
  readonly capacity: number | undefined;
  /** The cables that carry it: one, unless ports are aggregated. */
  readonly members: readonly MemberLink[];
  /** Cables of the same group that carry nothing, as they do not fit. */
  readonly idle: readonly MemberLink[];
}

/** A link of one cable. */
export function singleLink(member: MemberLink): PhysicalLink {
  return { members: [member], idle: NONE, ...member };
}

/** The port that stands for the end of an aggregated link at which a port is. */
export function linkEnd(link: PhysicalLink, port: Port): Port {
  if (port === link.a || port === link.b) return port;
  return port.device === link.a.device ? link.a : link.b;
}

export interface Link extends PhysicalLink {
  /** The domain that crosses it without a tag, if one does. */
  readonly untagged: BroadcastDomain | undefined;
  /** The domains that cross it with a tag. */
  readonly tagged: readonly BroadcastDomain[];
  /** The domains that the ports at its ends send; the other end drops those that it does not accept. */
  readonly fromA: VlanMembership;
  readonly fromB: VlanMembership;
  /** The end that spanning tree has discard: nothing passes, but flooded frames may still be sent towards it. */
  readonly blocked: Port | undefined;
  /** Whether it has failed: nothing is even sent into it. It then counts as blocked too. */
  readonly failed: boolean;
}

/** A direction of a link: frames leave by `out`. */
export interface Direction {
  readonly link: Link;
  readonly out: Port;
}

export function oppositePort(link: PhysicalLink, port: Port): Port {
  return linkEnd(link, port) === link.a ? link.b : link.a;
}

/** All cables of a link, those that carry nothing last. */
export function cablesOf({ members, idle }: PhysicalLink): readonly MemberLink[] {
  return idle.length === 0 ? members : [...members, ...idle];
}

/** The cable at a port of a link. */
export function memberLinkAt(link: PhysicalLink, port: Port): MemberLink | undefined {
  return cablesOf(link).find(({ a, b }) => a === port || b === port);
}

/** The end of a link at a device that it is cabled to; inside a device the end that forwards frames. */
export function portOf(link: PhysicalLink, device: Device): Port {
  return link.a.device === device ? link.a : link.b;
}

/** The domains that a port sends into its link. */
export function domainsSentBy(link: Link, out: Port): VlanMembership {
  return linkEnd(link, out) === link.a ? link.fromA : link.fromB;
}

/** How a link carries a broadcast domain: not at all, without a tag, or with one. */
export function taggingOf(link: Link, domain: BroadcastDomain): 'no' | 'untagged' | 'tagged' {
  if (link.untagged === domain) return 'untagged';
  return link.tagged.includes(domain) ? 'tagged' : 'no';
}
