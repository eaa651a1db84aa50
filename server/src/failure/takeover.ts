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
  const loadBefore = (link: Link, out: Port): number => {
    const own = before.topology.linkAt(out);
    // Of an aggregated link another cable may stand for all.
    const isSame =
      own !== undefined && [own.a, own.b].includes(out) && oppositePort(own, out) === oppositePort(link, out);
    return isSame ? before.load(own, out).line.peak : 0;
  };
  const share = ({ after: load, capacity }: Takeover): number => load / (capacity ?? Infinity);
  return after.topology.links
    .flatMap((link) =>
      [link.a, link.b].flatMap((out): Takeover[] => {
        const load = after.load(link, out).line.peak;
        if (load === 0) return [];
        const known = loadBefore(link, out);
        if (load <= known) return [];
        const { capacity } = link;
        const fits = capacity === undefined ? undefined : load * 10_000 <= limit * capacity;
        return [
          { at: `${portName(out)} → ${portName(oppositePort(link, out))}`, before: known, after: load, capacity, fits },
        ];
      }),
    )
    .sort((a, b) => share(b) - share(a));
}
