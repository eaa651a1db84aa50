/** A link: two ports joined by a cable. */

import type { Cable, Device, Port } from '../site/model.ts';
import type { BroadcastDomain, VlanMembership } from './vlan-membership.ts';

/** Two ports joined by a cable, whatever crosses it. */
export interface Joint {
  readonly cable: Cable;
  /** The ends in the order of the cable. */
  readonly a: Port;
  readonly b: Port;
  /** bit/s: the slower end's speed; `undefined` where neither end says. */
  readonly capacity: number | undefined;
}

export interface Link extends Joint {
  /** What crosses it without a tag; `undefined` where nothing does. */
  readonly untagged: BroadcastDomain | undefined;
  /** What crosses it with a tag. */
  readonly tagged: readonly BroadcastDomain[];
  /** What the ports at its ends send into it; what the other end does not take is lost there. */
  readonly fromA: VlanMembership;
  readonly fromB: VlanMembership;
  /** The end that discards, by spanning tree: nothing passes, but what is flooded may still be sent towards it. */
  readonly blocked: Port | undefined;
}

/** A direction of a link: that in which frames leave by `out`. */
export interface Hop {
  readonly link: Link;
  readonly out: Port;
}

export function oppositePort(link: Joint, port: Port): Port {
  return link.a === port ? link.b : link.a;
}

/** The end of a link at a device that it is cabled to; inside a device the end that forwards frames. */
export function portOf(link: Joint, device: Device): Port {
  return link.a.device === device ? link.a : link.b;
}

/** What leaves by a port into its link. */
export function sentBy(link: Link, out: Port): VlanMembership {
  return link.a === out ? link.fromA : link.fromB;
}

/** How a link carries a broadcast domain: not at all, without a tag, or with one. */
export function carries(link: Link, domain: BroadcastDomain): 'no' | 'untagged' | 'tagged' {
  if (link.untagged === domain) return 'untagged';
  return link.tagged.includes(domain) ? 'tagged' : 'no';
}
