/** The link that a cable of the text makes. */

import { perObject } from '../memo.ts';
import type { Link } from '../network/link.ts';
import type { Plan } from '../plan.ts';
import type { Item } from '../site/item.ts';

const byItem = perObject((links: readonly Link[]) => new Map(links.map((link) => [link.cable.item, link])));

export function linkAt({ network: { topology } }: Plan, item: Item): Link | undefined {
  return byItem(topology.links).get(item);
}

export function isLoaded({ network }: Plan, link: Link): boolean {
  return [link.a, link.b].some((out) => network.load(link, out).line.peak > 0);
}
