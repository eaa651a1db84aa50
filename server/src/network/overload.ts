/** Links that are overloaded by multicast that no host behind them has joined. */

import type { Link } from './link.ts';
import type { BroadcastDomain } from './vlan-membership.ts';
import { type FloodingCause, visitUnwanted } from './unwanted.ts';
import type { Network } from './network.ts';
import type { Policies, Port } from '../site/model.ts';

/** Why it crosses the link: it is flooded, or it travels to the querier. */
export type Reason = 'flooded' | 'to-querier';

/** A direction of a link that exceeds the policy only because of multicast that no host behind it has joined. */
export interface Overload {
  readonly reason: Reason;
  readonly link: Link;
  readonly out: Port;
  readonly capacity: number;
  readonly over: 'warn' | 'limit';
  /** bit/s at peak of that multicast. */
  readonly unwanted: number;
  /** The broadcast domains that it is sent into. */
  readonly domains: ReadonlySet<BroadcastDomain>;
}

function reasonOf(cause: FloodingCause): Reason {
  return cause === 'querier' ? 'to-querier' : 'flooded';
}

export function overloadsOf(network: Network, { warn, limit }: Policies['linkLoad']): Overload[] {
  const least = Math.min(warn, limit);
  const found: Overload[] = [];
  for (const link of network.topology.links) {
    const { capacity } = link;
    if (capacity === undefined || capacity === 0) continue;
    for (const out of [link.a, link.b]) {
      const load = network.load(link, out).line.peak;
      if (!exceeds(load, least, capacity)) continue;
      const over = exceeds(load, limit, capacity) ? 'limit' : 'warn';
      const sums = {
        'flooded': { unwanted: 0, domains: new Set<BroadcastDomain>() },
        'to-querier': { unwanted: 0, domains: new Set<BroadcastDomain>() },
      };
      visitUnwanted(network, link, out, (_, domain, cause, peak) => {
        const sum = sums[reasonOf(cause)];
        sum.unwanted += peak;
        sum.domains.add(domain);
      });
      for (const reason of ['flooded', 'to-querier'] as const) {
        const { unwanted, domains } = sums[reason];
        const cured = !exceeds(load - unwanted, over === 'limit' ? limit : warn, capacity);
        if (unwanted > 0 && cured) found.push({ reason, link, out, capacity, over, unwanted, domains });
      }
    }
  }
  return found;
}

/** `bound` is in hundredths of a percent. */
function exceeds(rate: number, bound: number, capacity: number): boolean {
  return rate * 10_000 > bound * capacity;
}

/** The names of the streams that no host behind the link has joined, in their order. */
export function unwantedStreams(network: Network, { link, out, reason }: Overload): string[] {
  const names: string[] = [];
  visitUnwanted(network, link, out, (stream, _, cause) => {
    if (reasonOf(cause) === reason) names.push(stream.name);
  });
  return names;
}
