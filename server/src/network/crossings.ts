/** Which stream crosses which link, in which direction, how often. */

import type { Link } from './link.ts';
import { carries, outOf } from './link.ts';
import type { Port, Stream } from '../site/model.ts';
import type { Load, StreamRates, WireRates } from './rates.ts';

/** Copies of a stream in one direction of a link, by whether the frames bear a tag and travel to a receiver or back. */
export interface Crossing {
  readonly stream: Stream;
  untagged: number;
  tagged: number;
  repliesUntagged: number;
  repliesTagged: number;
}

/** bit/s; sums of whole numbers, so exact. */
export interface DirectionLoad {
  readonly payload: Load;
  readonly frame: Load;
  readonly frameWithFcs: Load;
  readonly line: Load;
}

export const IDLE: DirectionLoad = { payload: zero(), frame: zero(), frameWithFcs: zero(), line: zero() };

function zero(): Load {
  return { nominal: 0, peak: 0 };
}

export class Crossings {
  private readonly byDirection: (Crossing[] | undefined)[];

  constructor(links: number) {
    this.byDirection = new Array<Crossing[] | undefined>(2 * links);
  }

  /** One more copy of `stream` on `link`, leaving by `out`. Streams are added one after another. */
  add(link: Link, out: Port, network: number, stream: Stream, reply = false): void {
    const direction = outOf(link, out);
    let list = this.byDirection[direction];
    if (list === undefined) this.byDirection[direction] = list = [];
    let crossing = list[list.length - 1];
    if (crossing?.stream !== stream) {
      crossing = { stream, untagged: 0, tagged: 0, repliesUntagged: 0, repliesTagged: 0 };
      list.push(crossing);
    }
    const tagged = carries(link, network) === 'tagged';
    if (reply) {
      if (tagged) crossing.repliesTagged++;
      else crossing.repliesUntagged++;
    } else if (tagged) crossing.tagged++;
    else crossing.untagged++;
  }

  at(direction: number): readonly Crossing[] {
    return this.byDirection[direction] ?? [];
  }
}

const KINDS = ['payload', 'frame', 'frameWithFcs', 'line'] as const;

/** What one stream puts on a link in one direction. */
export function loadOf(crossing: Crossing, rates: StreamRates): DirectionLoad {
  const total = (kind: keyof WireRates, part: keyof Load): number =>
    crossing.untagged * rates.untagged[kind][part] +
    crossing.tagged * rates.tagged[kind][part] +
    crossing.repliesUntagged * rates.reply.untagged[kind][part] +
    crossing.repliesTagged * rates.reply.tagged[kind][part];
  const load = (kind: keyof WireRates): Load => ({ nominal: total(kind, 'nominal'), peak: total(kind, 'peak') });
  return { payload: load('payload'), frame: load('frame'), frameWithFcs: load('frameWithFcs'), line: load('line') };
}

/** What all streams together put on a link in one direction. */
export function totalLoad(crossings: readonly Crossing[], rates: readonly StreamRates[]): DirectionLoad {
  if (crossings.length === 0) return IDLE;
  const sum: Record<(typeof KINDS)[number], { nominal: number; peak: number }> = {
    payload: { nominal: 0, peak: 0 }, frame: { nominal: 0, peak: 0 }, frameWithFcs: { nominal: 0, peak: 0 }, line: { nominal: 0, peak: 0 },
  };
  for (const crossing of crossings) {
    const own = rates[crossing.stream.index];
    if (own === undefined) continue;
    const load = loadOf(crossing, own);
    for (const kind of KINDS) {
      sum[kind].nominal += load[kind].nominal;
      sum[kind].peak += load[kind].peak;
    }
  }
  return sum;
}
