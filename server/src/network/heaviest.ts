/** What takes most of a link. */

import type { Port } from '../site/model.ts';
import { list } from '../text/words.ts';
import type { Link } from './link.ts';
import { linePeakOf } from './loads.ts';
import type { Network } from './network.ts';

/** `paddock-live and 14 others`: the stream or other traffic that takes most, and how many more cross. */
export function heaviest({ copies, rates, trafficCopies }: Network, link: Link, out: Port): string {
  const all = [
    ...copies(link, out).map((one) => ({ name: one.stream.name, peak: linePeakOf(one, rates(one.stream)) })),
    ...trafficCopies(link, out).map((one) => ({ name: one.traffic.name, peak: linePeakOf(one, one.rates) })),
  ].sort((a, b) => b.peak - a.peak);
  const names = all.map(({ name }) => name);
  return names.length > 2 ? `${names[0] ?? ''} and ${names.length - 1} others` : list(names);
}
