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
  for (const copies of all) {
    const rates = ratesOf(copies.stream);
    for (const kind of KINDS) {
      sum[kind].nominal += partOf(copies, rates, kind, 'nominal');
      sum[kind].peak += partOf(copies, rates, kind, 'peak');
    }
  }
  return sum;
}

const KINDS = ['payload', 'frame', 'frameWithFcs', 'line'] as const;

function zero(): { nominal: number; peak: number } {
  return { nominal: 0, peak: 0 };
}

/** What one stream puts on a link in one direction. */
export function loadOf(copies: StreamCopies, rates: StreamRates): DirectionLoad {
  const load = (kind: keyof WireRates): Load => ({
    nominal: partOf(copies, rates, kind, 'nominal'),
    peak: partOf(copies, rates, kind, 'peak'),
  });
  return { payload: load('payload'), frame: load('frame'), frameWithFcs: load('frameWithFcs'), line: load('line') };
}

/** bit/s at line rate and peak that one stream puts on a link in one direction. */
export function linePeakOf(copies: StreamCopies, rates: StreamRates): number {
  return partOf(copies, rates, 'line', 'peak');
}

function partOf(copies: StreamCopies, rates: StreamRates, kind: keyof WireRates, part: keyof Load): number {
  let total = 0;
  if (copies.untagged > 0) total += copies.untagged * rates.untagged[kind][part];
  if (copies.tagged > 0) total += copies.tagged * rates.tagged[kind][part];
  if (copies.repliesUntagged > 0) total += copies.repliesUntagged * rates.reply.untagged[kind][part];
  if (copies.repliesTagged > 0) total += copies.repliesTagged * rates.reply.tagged[kind][part];
  return total;
}
