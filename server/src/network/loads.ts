/** What streams put on links, from the copies that cross and their rates. */

import type { Port, Stream } from '../site/model.ts';
import type { Link } from './link.ts';
import type { Load, StreamRates, WireRates } from './rates.ts';
import type { Routes, StreamCopies } from './routes.ts';

/** bit/s; sums of whole numbers, so exact. */
export interface DirectionLoad {
  readonly payload: Load;
  readonly frame: Load;
  readonly frameWithFcs: Load;
  readonly line: Load;
}

const ZERO: Load = { nominal: 0, peak: 0 };
export const IDLE: DirectionLoad = { payload: ZERO, frame: ZERO, frameWithFcs: ZERO, line: ZERO };

/** What all streams put on each link together, in the direction in which frames leave by `out`. */
export function loadsOf(
  links: readonly Link[],
  copies: Routes['copies'],
  rates: (stream: Stream) => StreamRates,
): (link: Link, out: Port) => DirectionLoad {
  const total = (link: Link, out: Port): DirectionLoad => totalLoad(copies(link, out), rates);
  const byLink = new Map(links.map((link) => [link, { fromA: total(link, link.a), fromB: total(link, link.b) }]));
  return (link, out) => {
    const both = byLink.get(link);
    if (both === undefined) throw new Error('a load of a link that is not of this site');
    return link.a === out ? both.fromA : both.fromB;
  };
}

function totalLoad(all: readonly StreamCopies[], ratesOf: (stream: Stream) => StreamRates): DirectionLoad {
  if (all.length === 0) return IDLE;
  const sum = { payload: zero(), frame: zero(), frameWithFcs: zero(), line: zero() };
  for (const { stream, untagged, tagged, repliesUntagged, repliesTagged } of all) {
    const rates = ratesOf(stream);
    if (untagged > 0) add(sum, rates.untagged, untagged);
    if (tagged > 0) add(sum, rates.tagged, tagged);
    if (repliesUntagged > 0) add(sum, rates.reply.untagged, repliesUntagged);
    if (repliesTagged > 0) add(sum, rates.reply.tagged, repliesTagged);
  }
  return sum;
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

/** What one stream puts on a link in one direction. */
export function loadOf(copies: StreamCopies, rates: StreamRates): DirectionLoad {
  return totalLoad([copies], () => rates);
}

/** bit/s at line rate and peak that one stream puts on a link in one direction. */
export function linePeakOf(copies: StreamCopies, { untagged, tagged, reply }: StreamRates): number {
  return (
    copies.untagged * untagged.line.peak +
    copies.tagged * tagged.line.peak +
    copies.repliesUntagged * reply.untagged.line.peak +
    copies.repliesTagged * reply.tagged.line.peak
  );
}
