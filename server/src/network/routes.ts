/** Which receivers each stream reaches, and which links it crosses in which direction; independent of its rate. */

import type { Device, Port, Stream } from '../site/model.ts';
import type { Copy, Delivery, Routed } from './delivery.ts';
import { type Link, sentBy } from './link.ts';
import { Memberships, routeMulticast } from './multicast.ts';
import { type RoutingContext, routeUnicast } from './unicast.ts';
import type { Wiring } from './wiring.ts';

/** Copies of a stream in one direction of a link: tagged or not, towards receivers or replies. */
export interface StreamCopies {
  readonly stream: Stream;
  readonly untagged: number;
  readonly tagged: number;
  readonly repliesUntagged: number;
  readonly repliesTagged: number;
}

export interface Routes {
  readonly memberships: Memberships;
  /** In the order of the streams. */
  readonly deliveries: readonly Delivery[];
  readonly delivery: (stream: Stream) => Delivery;
  /** The streams that cross a link in the direction in which frames leave by `out`, in their order. */
  readonly copies: (link: Link, out: Port) => readonly StreamCopies[];
}

export function routesOf(
  wiring: Wiring,
  deviceByName: ReadonlyMap<string, Device>,
  streams: readonly Stream[],
): Routes {
  const context: RoutingContext = { ...wiring, deviceByName };
  const memberships = new Memberships(context, streams);
  const byStream = new Map<Stream, Delivery>();
  const crossing = new Crossing();
  for (const stream of streams) {
    const { delivery, copies } = route(context, memberships, stream);
    byStream.set(stream, delivery);
    for (const copy of copies) crossing.add(stream, copy);
  }
  return {
    memberships,
    deliveries: [...byStream.values()],
    delivery: (stream) => {
      const delivery = byStream.get(stream);
      if (delivery === undefined) throw new Error(`${stream.name} is not a stream of this site`);
      return delivery;
    },
    copies: (link, out) => crossing.of(link, out),
  };
}

function route(context: RoutingContext, memberships: Memberships, stream: Stream): Routed {
  const source = stream.source === undefined ? undefined : context.deviceByName.get(stream.source);
  if (source !== undefined && stream.group !== undefined)
    return routeMulticast(context, memberships, stream, source, stream.group);
  if (source !== undefined) return routeUnicast(context, stream, source);
  const nowhere = { leaves: undefined, route: undefined, reaches: [], unreached: [], domains: [] };
  return { delivery: { stream, source, ...nowhere }, copies: [] };
}

const NONE: readonly StreamCopies[] = [];

/** Counts the copies as streams are routed, one stream after another. */
class Crossing {
  private readonly byLink = new Map<Link, { readonly fromA: Counting[]; readonly fromB: Counting[] }>();

  add(stream: Stream, { link, out, domain, reply }: Copy): void {
    let both = this.byLink.get(link);
    if (both === undefined) this.byLink.set(link, (both = { fromA: [], fromB: [] }));
    const list = link.a === out ? both.fromA : both.fromB;
    let count = list.at(-1);
    if (count?.stream !== stream) {
      count = { stream, untagged: 0, tagged: 0, repliesUntagged: 0, repliesTagged: 0 };
      list.push(count);
    }
    const isTagged = sentBy(link, out).tagged.includes(domain);
    if (reply) count[isTagged ? 'repliesTagged' : 'repliesUntagged']++;
    else count[isTagged ? 'tagged' : 'untagged']++;
  }

  of(link: Link, out: Port): readonly StreamCopies[] {
    const both = this.byLink.get(link);
    return both === undefined ? NONE : link.a === out ? both.fromA : both.fromB;
  }
}

type Counting = { -readonly [K in keyof StreamCopies]: StreamCopies[K] };
