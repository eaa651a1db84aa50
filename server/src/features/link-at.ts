/** The link that a cable of the text makes. */

import type { Link } from '../network/link.ts';
import type { Plan } from '../plan.ts';
import type { Item } from '../site/item.ts';

const known = new WeakMap<Plan['network']['topology'], ReadonlyMap<Item, Link>>();

export function linkAt({ network: { topology } }: Plan, item: Item): Link | undefined {
  let links = known.get(topology);
  if (links === undefined)
    known.set(topology, (links = new Map(topology.links.map((link) => [link.cable.item, link]))));
  return links.get(item);
}

export function isLoaded({ network }: Plan, { index }: Link): boolean {
  return [2 * index, 2 * index + 1].some((direction) => (network.loads[direction]?.line.peak ?? 0) > 0);
}
