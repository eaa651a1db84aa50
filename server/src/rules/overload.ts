/** Links that are overloaded by multicast that nobody behind them has asked for. */

import { type Link, outOf } from '../network/link.ts';
import { type Cause, type Unwanted, unwantedOn } from '../network/unwanted.ts';
import type { Port } from '../site/model.ts';
import { LIMIT, WARN } from './links/link-load.ts';
import type { Subject } from './rule.ts';

/** A direction of a link that would carry no more than policy allows if it were not for what nobody behind wants. */
export interface Overload {
  readonly link: Link;
  readonly out: Port;
  readonly capacity: number;
  readonly over: 'warn' | 'limit';
  readonly streams: readonly Unwanted[];
  /** bit/s at peak of those streams. */
  readonly unwanted: number;
}

export function* overloadsBy({ site, network }: Subject, causes: readonly Cause[]): Iterable<Overload> {
  const { warn = WARN, limit = LIMIT } = site.policies.linkLoad;
  for (const link of network.topology.links) {
    const { capacity } = link;
    if (capacity === undefined || capacity === 0) continue;
    for (const out of [link.a, link.b]) {
      const load = network.loads[outOf(link, out)]?.line.peak ?? 0;
      const exceeds = (rate: number, bound: number): boolean => rate * 10_000 > bound * capacity;
      if (!exceeds(load, Math.min(warn, limit))) continue;
      const streams = unwantedOn(network, link, out).filter(({ cause }) => causes.includes(cause));
      const unwanted = streams.reduce((sum, { peak }) => sum + peak, 0);
      const over = exceeds(load, limit) ? 'limit' : 'warn';
      if (streams.length > 0 && !exceeds(load - unwanted, over === 'limit' ? limit : warn)) yield { link, out, capacity, over, streams, unwanted };
    }
  }
}
