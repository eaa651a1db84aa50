/** The flows that take most of a link. */

import type { Port, Stream, Traffic } from '../site/model.ts';
import { asName, list } from '../text/words.ts';
import type { Link } from './link.ts';
import { linePeakOf } from './loads.ts';
import type { Network } from './network.ts';

/** A stream or other traffic that crosses a direction of a link. */
export interface LinkFlow {
  readonly of: Stream | Traffic;
  /** bit/s at line rate. */
  readonly peak: number;
}

/** All flows of a link in one direction, the greatest first. */
export function flowsOn({ copies, rates, trafficCopies }: Network, link: Link, out: Port): LinkFlow[] {
  return [
    ...copies(link, out).map((crossing) => ({
      of: crossing.stream,
      peak: linePeakOf(crossing, rates(crossing.stream)),
    })),
    ...trafficCopies(link, out).map((crossing) => ({
      of: crossing.traffic,
      peak: linePeakOf(crossing, crossing.rates),
    })),
  ].sort((a, b) => b.peak - a.peak);
}

/** `paddock-live and 14 others`: the stream or other traffic that takes most, and how many more cross. */
export function heaviestFlowWords(network: Network, link: Link, out: Port): string {
  const names = flowsOn(network, link, out).map(({ of }) => of.name);
  return names.length > 2 ? `${asName(names[0] ?? '')} and ${names.length - 1} others` : list(names.map(asName));
}
