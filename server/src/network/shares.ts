/**
 * The load that one cable of an aggregated link may carry. Frames of one conversation keep their order, so each
 * conversation takes one cable (IEEE 802.1AX-2020 §6.2.4, from memory), which a hash of addresses chooses. The standard
 * does not fix the hash, so these figures are the least and the most instead of a guess: each stream, and other
 * traffic, is one conversation that cannot be split, and any of them may share a cable.
 */

import type { Port } from '../site/model.ts';
import type { Link } from './link.ts';
import { type Counts, linePeakOf } from './loads.ts';
import type { CrossingRates } from './rates.ts';
import type { Network } from './network.ts';

/** bit/s at peak on the line, in one direction. */
export interface Shares {
  /** The greatest conversations, at most two, the greater first. */
  readonly greatest: readonly { readonly name: string; readonly peak: number }[];
  /** The least that the fullest cable carries, however the conversations are spread. */
  readonly least: number;
  /** The two greatest on one cable. */
  readonly two: number;
  /** All on one cable. */
  readonly all: number;
}

/** `undefined` for a link of one cable. */
export function sharesOf(
  network: Pick<Network, 'copies' | 'rates' | 'trafficCopies' | 'load'>,
  link: Link,
  out: Port,
): Shares | undefined {
  const cables = link.members.length;
  if (cables < 2) return undefined;
  const conversations = [
    ...network.copies(link, out).flatMap((copies) => each(copies.stream.name, copies, network.rates(copies.stream))),
    ...network.trafficCopies(link, out).flatMap((copies) => each(copies.traffic.name, copies, copies.rates)),
  ].sort((a, b) => b.peak - a.peak);
  const peak = (index: number): number => conversations[index]?.peak ?? 0;
  const all = network.load(link, out).line.peak;
  return {
    greatest: conversations.slice(0, 2),
    // The greatest of: the mean; the greatest conversation; two conversations that must share a cable.
    least: Math.max(
      Math.ceil(all / cables),
      peak(0),
      conversations.length > cables ? peak(cables - 1) + peak(cables) : 0,
    ),
    two: peak(0) + peak(1),
    all,
  };
}

/** The conversations of a flow: each copy, and the replies to each. */
function each(name: string, counts: Counts, rates: CrossingRates): { name: string; peak: number }[] {
  const none = { untagged: 0, tagged: 0, repliesUntagged: 0, repliesTagged: 0 };
  return (['untagged', 'tagged', 'repliesUntagged', 'repliesTagged'] as const).flatMap((kind) => {
    const peak = linePeakOf({ ...none, [kind]: 1 }, rates);
    return Array.from({ length: counts[kind] }, () => ({ name, peak }));
  });
}
