/** Links that carry more once something has failed. */

import { type Link, oppositePort } from '../network/link.ts';
import type { Network } from '../network/network.ts';
import { type Port, portName } from '../site/model.ts';
import type { Works } from './element.ts';

export interface Takeover {
  /** `core/15 → glasshouse/7` */
  readonly at: string;
  /** bit/s at line rate and peak. */
  readonly before: number;
  readonly after: number;
  /** bit/s; `undefined` where it is not known. */
  readonly capacity: number | undefined;
  /** Whether it is within the limit of the policy. */
  readonly fits: boolean | undefined;
}

/** The fullest first. */
export function takeoversIn({ site, network: before }: Works, after: Network): Takeover[] {
  const { limit } = site.policies.linkLoad;
  const loads = new Map(directions(before).map(([at, link, out]) => [at, before.load(link, out).line.peak]));
  const share = ({ after: load, capacity }: Takeover): number => load / (capacity ?? Infinity);
  return directions(after)
    .flatMap(([at, link, out]): Takeover[] => {
      const load = after.load(link, out).line.peak;
      const known = loads.get(at) ?? 0;
      const { capacity } = link;
      const fits = capacity === undefined ? undefined : load * 10_000 <= limit * capacity;
      return load > known ? [{ at, before: known, after: load, capacity, fits }] : [];
    })
    .sort((a, b) => share(b) - share(a));
}

export function directions({ topology }: Network): [string, Link, Port][] {
  return topology.links.flatMap((link) =>
    [link.a, link.b].map((out): [string, Link, Port] => [
      `${portName(out)} → ${portName(oppositePort(link, out))}`,
      link,
      out,
    ]),
  );
}
