/** What takes most of a link. */

import type { Port } from '../site/model.ts';
import { list } from '../text/words.ts';
import type { Link } from './link.ts';
import { linePeakOf } from './loads.ts';
import type { Network } from './network.ts';

/** `paddock-live and 14 others`: the stream that takes most, and how many more cross. */
export function heaviest({ copies, rates }: Network, link: Link, out: Port): string {
  const all = copies(link, out);
  let greatest = '';
  let second = '';
  let [most, more] = [-1, -1];
  for (const one of all) {
    const peak = linePeakOf(one, rates(one.stream));
    if (peak > most) {
      [second, more] = [greatest, most];
      [greatest, most] = [one.stream.name, peak];
    } else if (peak > more) {
      [second, more] = [one.stream.name, peak];
    }
  }
  if (all.length > 2) return `${greatest} and ${all.length - 1} others`;
  return list(all.length === 2 ? [greatest, second] : [greatest]);
}
