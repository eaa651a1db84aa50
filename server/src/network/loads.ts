/** The load that streams and other traffic put on links, from the copies that cross and their rates. */

import type { Port, Stream } from '../site/model.ts';
import type { Link } from './link.ts';
import type { CrossingRates, Load, StreamRates, WireRates } from './rates.ts';
import type { Routes, StreamCopies } from './routes.ts';
import type { TrafficRoutes } from './traffic.ts';

/** bit/s; sums of whole numbers, so exact. */
export interface DirectionLoad {
  readonly payload: Load;
  readonly frame: Load;
  readonly frameWithFcs: Load;
  readonly line: Load;
}

const ZERO: Load = { nominal: 0, peak: 0 };
export const IDLE: DirectionLoad = { payload: ZERO, frame: ZERO, frameWithFcs: ZERO, line: ZERO };

/** The load of all streams and other traffic on a link, in the direction in which frames leave by `out`. */
export function loadsOf(
  links: readonly Link[],
  copies: Routes['copies'],
  rates: (stream: Stream) => StreamRates,
  traffic: TrafficRoutes['crossing'],
): (link: Link, out: Port) => DirectionLoad {
  const total = (link: Link, out: Port): DirectionLoad => {
    const crossing = copies(link, out);
    const other = traffic(link, out);
    if (crossing.length + other.length === 0) return IDLE;
    const sum = zeroSum();
    for (const counts of crossing) addAll(sum, counts, rates(counts.stream));
    for (const counts of other) addAll(sum, counts, counts.rates);
    return sum;
  };
  const byLink = new Map(links.map((link) => [link, { fromA: total(link, link.a), fromB: total(link, link.b) }]));
  return (link, out) => {
    const both = byLink.get(link);
    if (both === undefined) throw new Error('the link is not of this site');
    return link.a === out ? both.fromA : both.fromB;
  };
}

/** Copies in one direction of a link. */
export type Counts = Omit<StreamCopies, 'stream'>;

function addAll(
  sum: Sum,
  { untagged, tagged, repliesUntagged, repliesTagged }: Counts,
  { untagged: plain, tagged: withTag, reply }: CrossingRates,
): void {
  if (untagged > 0) add(sum, plain, untagged);
  if (tagged > 0) add(sum, withTag, tagged);
  if (repliesUntagged > 0) add(sum, reply.untagged, repliesUntagged);
  if (repliesTagged > 0) add(sum, reply.tagged, repliesTagged);
}

function zeroSum(): Sum {
  return { payload: zero(), frame: zero(), frameWithFcs: zero(), line: zero() };
}

type Sum = Record<keyof WireRates, { nominal: number; peak: number }>;

// Written out, since it runs for each stream on each link.
function add(sum: Sum, { payload, frame, frameWithFcs, line }: WireRates, copies: number): void {
  sum.payload.nominal += copies * payload.nominal;
  sum.payload.peak += copies * payload.peak;
  sum.frame.nominal += copies * frame.nominal;
  sum.frame.peak += copies * frame.peak;
  sum.frameWithFcs.nominal += copies * frameWithFcs.nominal;
  sum.frameWithFcs.peak += copies * frameWithFcs.peak;
  sum.line.nominal += copies * line.nominal;
  sum.line.peak += copies * line.peak;
}

function zero(): { nominal: number; peak: number } {
  return { nominal: 0, peak: 0 };
}

/** The load of one stream, or other traffic, on a link in one direction. */
export function loadOf(copies: Counts, rates: CrossingRates): DirectionLoad {
  const sum = zeroSum();
  addAll(sum, copies, rates);
  return sum;
}

/** bit/s at line rate and peak that one stream, or other traffic, puts on a link in one direction. */
export function linePeakOf(copies: Counts, { untagged, tagged, reply }: CrossingRates): number {
  return (
    copies.untagged * untagged.line.peak +
    copies.tagged * tagged.line.peak +
    copies.repliesUntagged * reply.untagged.line.peak +
    copies.repliesTagged * reply.tagged.line.peak
  );
}
