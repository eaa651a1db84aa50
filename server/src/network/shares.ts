/**
 * What a cable of an aggregated link may carry. Frames of one conversation keep their order, so each takes one cable
 * (IEEE 802.1AX-2020 §6.2.4, from memory), which a hash of their addresses chooses. Nothing in the standard says
 * which, so the least and the most are told instead of a guess: every stream, and other traffic, is one conversation
 * that cannot be split, and any of them may come together.
 */

import type { Port } from '../site/model.ts';
import type { Link } from './link.ts';
import { type Counts, linePeakOf } from './loads.ts';
import type { CrossingRates } from './rates.ts';
import type { Network } from './network.ts';

/** bit/s at peak on the line, in one direction. */
export interface Shares {
  /** The greatest conversations, the greatest first: two, where there are two. */
  readonly greatest: readonly { readonly name: string; readonly peak: number }[];
  /** What the fullest cable carries at the least, however they are spread. */
  readonly least: number;
  /** The two greatest on one cable. */
  readonly two: number;
  /** All on one cable. */
  readonly all: number;
}

/** `undefined` of a link of one cable. */
export function sharesOf(
  network: Pick<Network, 'copies' | 'rates' | 'trafficCopies' | 'load'>,
  link: Link,
  out: Port,
): Shares | undefined {
  const cables = link.members.length;
  if (cables < 2) return undefined;
  const conversations = [
    ...network.copies(link, out).flatMap((one) => each(one.stream.name, one, network.rates(one.stream))),
    ...network.trafficCopies(link, out).flatMap((one) => each(one.traffic.name, one, one.rates)),
  ].sort((a, b) => b.peak - a.peak);
  const peak = (index: number): number => conversations[index]?.peak ?? 0;
  const all = network.load(link, out).line.peak;
  return {
    greatest: conversations.slice(0, 2),
    // The mean; the greatest; or two of the greatest where there is one more than there are cables.
    least: Math.max(
      Math.ceil(all / cables),
      peak(0),
      conversations.length > cables ? peak(cables - 1) + peak(cables) : 0,
    ),
    two: peak(0) + peak(1),
    all,
  };
}

/** Copy by copy, and reply by reply. */
function each(name: string, counts: Counts, rates: CrossingRates): { name: string; peak: number }[] {
  const none = { untagged: 0, tagged: 0, repliesUntagged: 0, repliesTagged: 0 };
  return (['untagged', 'tagged', 'repliesUntagged', 'repliesTagged'] as const).flatMap((kind) => {
    const peak = linePeakOf({ ...none, [kind]: 1 }, rates);
    return Array.from({ length: counts[kind] }, () => ({ name, peak }));
  });
}
