/** Which stream crosses which link, in which direction, how often. */

import type { Link } from './link.ts';
import { outOf, sentBy } from './link.ts';
import type { Port, Stream } from '../site/model.ts';
import type { Load, StreamRates, WireRates } from './rates.ts';

/** Copies of a stream in one direction of a link, by whether the frames bear a tag and travel to a receiver or back. */
export interface Crossing {
  stream: Stream;
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

function zero(): { nominal: number; peak: number } {
  return { nominal: 0, peak: 0 };
}

export class Crossings {
  private readonly byDirection: (Crossing[] | undefined)[];

  constructor(byDirection: (Crossing[] | undefined)[]) {
    this.byDirection = byDirection;
  }

  static over(links: readonly Link[]): Crossings {
    return new Crossings(new Array<Crossing[] | undefined>(2 * links.length));
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
    const tagged = sentBy(link, out).tagged.includes(network);
    if (reply) {
      if (tagged) crossing.repliesTagged++;
      else crossing.repliesUntagged++;
    } else if (tagged) crossing.tagged++;
    else crossing.untagged++;
  }

  /** The same ways, taken by the streams as they are read now; this object is out of date then. */
  renewed(streams: readonly Stream[]): Crossings {
    for (const list of this.byDirection) {
      if (list === undefined) continue;
      for (const crossing of list) crossing.stream = streams[crossing.stream.index] ?? crossing.stream;
    }
    return new Crossings(this.byDirection);
  }

  /** The directions that one of the streams crosses, each once; the streams by their index. */
  crossedBy(streams: ReadonlySet<number>): number[] {
    const crossed: number[] = [];
    for (let direction = 0; direction < this.byDirection.length; direction++) {
      const list = this.byDirection[direction];
      if (list !== undefined && isAmong(list, streams)) crossed.push(direction);
    }
    return crossed;
  }

  at(direction: number): readonly Crossing[] {
    return this.byDirection[direction] ?? [];
  }
}

function isAmong(crossings: readonly Crossing[], streams: ReadonlySet<number>): boolean {
  for (const { stream } of crossings) if (streams.has(stream.index)) return true;
  return false;
}

/** By stream index; what loads follow from, renewed in place so that a load that stays does not keep old rates. */
export interface CurrentRates {
  all: readonly StreamRates[];
}

/** What one stream puts on a link in one direction. */
export function loadOf(crossing: Crossing, rates: StreamRates): DirectionLoad {
  const load = (kind: keyof WireRates): Load => ({
    nominal: partOf(crossing, rates, kind, 'nominal'),
    peak: partOf(crossing, rates, kind, 'peak'),
  });
  return { payload: load('payload'), frame: load('frame'), frameWithFcs: load('frameWithFcs'), line: load('line') };
}

function partOf(crossing: Crossing, rates: StreamRates, kind: keyof WireRates, part: keyof Load): number {
  let total = 0;
  if (crossing.untagged > 0) total += crossing.untagged * rates.untagged[kind][part];
  if (crossing.tagged > 0) total += crossing.tagged * rates.tagged[kind][part];
  if (crossing.repliesUntagged > 0) total += crossing.repliesUntagged * rates.reply.untagged[kind][part];
  if (crossing.repliesTagged > 0) total += crossing.repliesTagged * rates.reply.tagged[kind][part];
  return total;
}

/** bit/s at line rate and peak that one stream puts on a link in one direction. */
export function linePeakOf(crossing: Crossing, { untagged, tagged, reply }: StreamRates): number {
  return (
    crossing.untagged * untagged.line.peak +
    crossing.tagged * tagged.line.peak +
    crossing.repliesUntagged * reply.untagged.line.peak +
    crossing.repliesTagged * reply.tagged.line.peak
  );
}

/** What all streams together put on a link in one direction; summed when asked for. */
class TotalLoad implements DirectionLoad {
  private readonly crossings: readonly Crossing[];
  private readonly rates: CurrentRates;
  private readonly known: Partial<Record<keyof WireRates, Load>> = {};

  constructor(crossings: readonly Crossing[], rates: CurrentRates) {
    this.crossings = crossings;
    this.rates = rates;
  }

  get payload(): Load {
    return this.sum('payload');
  }

  get frame(): Load {
    return this.sum('frame');
  }

  get frameWithFcs(): Load {
    return this.sum('frameWithFcs');
  }

  get line(): Load {
    return this.sum('line');
  }

  private sum(kind: keyof WireRates): Load {
    const known = this.known[kind];
    if (known !== undefined) return known;
    const load = zero();
    for (const crossing of this.crossings) {
      const rates = this.rates.all[crossing.stream.index];
      if (rates === undefined) continue;
      load.nominal += partOf(crossing, rates, kind, 'nominal');
      load.peak += partOf(crossing, rates, kind, 'peak');
    }
    return (this.known[kind] = load);
  }
}

export function totalLoad(crossings: readonly Crossing[], rates: CurrentRates): DirectionLoad {
  return crossings.length === 0 ? IDLE : new TotalLoad(crossings, rates);
}
