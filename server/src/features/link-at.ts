/** The link that a cable of the site makes. */

import type { Link } from '../network/link.ts';
import type { Plan } from '../plan.ts';
import type { Item } from '../site/item.ts';
import { portAt } from '../site/model.ts';
import { readCable } from '../site/read.ts';

/** `undefined` where the cable makes none, such as a second cable at a port. */
export function linkAt({ site, network: { topology } }: Plan, item: Item): Link | undefined {
  const port = portAt(site, readCable(item).from);
  const link = port === undefined ? undefined : topology.linkAt(port);
  return link?.cable.item === item ? link : undefined;
}

export function isLinkLoaded({ network }: Plan, link: Link): boolean {
  return [link.a, link.b].some((out) => network.load(link, out).line.peak > 0);
}
