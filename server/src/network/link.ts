/** A link: two ports joined by a cable. */

import type { Cable, Port } from '../site/model.ts';
import type { Membership } from './membership.ts';

export interface Link {
  readonly index: number;
  cable: Cable;
  /** The ends in the order of the cable; direction 2·index leads from `a` to `b`, 2·index + 1 back. */
  readonly a: Port;
  readonly b: Port;
  /** bit/s: the slower end's speed; `undefined` where neither end says. */
  capacity: number | undefined;
  /** Network whose frames cross without a tag. */
  untagged: number;
  /** Networks whose frames cross with a tag. */
  tagged: readonly number[];
  /** What the ports at its ends send into it; what the other end does not take is lost there. */
  fromA: Membership;
  fromB: Membership;
  /** The end that discards, by spanning tree: nothing passes, but what is flooded may still be sent towards it. */
  blocked: Port | undefined;
}

export function far(link: Link, port: Port): Port {
  return link.a === port ? link.b : link.a;
}

/** The direction of a link in which frames leave by `port`. */
export function outOf(link: Link, port: Port): number {
  return link.a === port ? 2 * link.index : 2 * link.index + 1;
}

/** What leaves by a port into its link, by network. */
export function sentBy(link: Link, out: Port): Membership {
  return link.a === out ? link.fromA : link.fromB;
}

/** How a link carries a network: not at all, without a tag, or with one. */
export function carries(link: Link, network: number): 'no' | 'untagged' | 'tagged' {
  if (link.untagged === network) return 'untagged';
  return link.tagged.includes(network) ? 'tagged' : 'no';
}
