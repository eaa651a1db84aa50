/** How many more streams or cameras like one of the site fit before the first limit, and which limit that is. */

import { linePeakOf } from '../network/loads.ts';
import { type Link, oppositePort } from '../network/link.ts';
import type { Plan } from '../plan.ts';
import { type Device, type Port, type Stream, portName } from '../site/model.ts';
import { bitRate, bytes, threshold, watts } from '../text/words.ts';

export interface Headroom {
  /** How many more fit; 0 where the limit is reached. */
  readonly more: number;
  /** The limit that one more would exceed. */
  readonly limit: string;
}

/** For more streams with the same source and receivers; `undefined` where nothing limits them. */
export function streamHeadroom(plan: Plan, stream: Stream): Headroom | undefined {
  return least(shared(plan, (candidate) => (candidate === stream ? stream : undefined))).get(stream);
}

/** The same for each stream, in one pass over the site. */
export function streamHeadrooms(plan: Plan): ReadonlyMap<Stream, Headroom> {
  return least(shared(plan, (stream) => stream));
}

/** For more devices like this at the same switch, with streams and recordings like its own. */
export function deviceHeadroom(plan: Plan, device: Device): Headroom | undefined {
  const own = streamsOf(plan, device);
  const limits = shared(plan, (stream) => (own.has(stream) ? device : undefined), device);
  return least([...limits, ...ports(plan, device), ...power(plan, device)]).get(device);
}

/** For more of the heaviest stream that leaves by a port; `undefined` where none does. */
export function outHeadroom(
  plan: Plan,
  link: Link,
  out: Port,
): { stream: Stream; headroom: Headroom | undefined } | undefined {
  let heaviest: Stream | undefined;
  let most = 0;
  for (const { stream, untagged, tagged } of plan.network.copies(link, out)) {
    const rates = plan.network.rates(stream);
    const peak = untagged * rates.untagged.line.peak + tagged * rates.tagged.line.peak;
    if (peak > most) [heaviest, most] = [stream, peak];
  }
  return heaviest === undefined ? undefined : { stream: heaviest, headroom: streamHeadroom(plan, heaviest) };
}

/** A limit, and how many more of `of` fit before it. */
interface Limit<Of> {
  readonly of: Of;
  readonly more: number;
  /** In words, which only the least needs. */
  readonly limit: () => string;
}

/** What a stream counts towards: itself, or what it is a part of; `undefined` where it does not count. */
type CountedBy<Of> = (stream: Stream) => Of | undefined;

function least<Of>(limits: Iterable<Limit<Of>>): Map<Of, Headroom> {
  const found = new Map<Of, Limit<Of>>();
  for (const limit of limits) if (limit.more < (found.get(limit.of)?.more ?? Infinity)) found.set(limit.of, limit);
  return new Map([...found].map(([of, { more, limit }]) => [of, { more, limit: limit() }]));
}

function* shared<Of>(plan: Plan, by: CountedBy<Of>, beside?: Device): Iterable<Limit<Of>> {
  yield* links(plan, by, beside);
  yield* volumes(plan, by);
}

function fitting(spare: number, each: number): number {
  return Math.max(0, Math.floor(spare / each));
}

/** What a device sends, and the streams that carry that on. */
function streamsOf({ site }: Plan, device: Device): ReadonlySet<Stream> {
  const found = new Set(site.streams.filter(({ source }) => source === device.name));
  for (let before = -1; before !== found.size;) {
    before = found.size;
    const names = new Set([...found].map(({ name }) => name));
    for (const stream of site.streams) if (stream.carries !== undefined && names.has(stream.carries)) found.add(stream);
  }
  return found;
}

/**
 * The links that the streams share. One more device would have a cable of its own, so that of `beside` does not count.
 */
function* links<Of>({ site, network }: Plan, by: CountedBy<Of>, beside: Device | undefined): Iterable<Limit<Of>> {
  const { limit } = site.policies.linkLoad;
  for (const link of network.topology.links) {
    const { capacity } = link;
    if (capacity === undefined || link.a.device === beside || link.b.device === beside) continue;
    for (const out of [link.a, link.b]) {
      const sums = new Map<Of, number>();
      // Where a screen shows some of its streams at a time, one more to choose from adds nothing.
      const isChosenFrom = network.waiting(link, out).length > 0;
      for (const copies of network.copies(link, out))
        if (!isChosenFrom || !network.choices.streams.has(copies.stream))
          add(sums, by(copies.stream), linePeakOf(copies, network.rates(copies.stream)));
      const spare = (limit * capacity) / 10_000 - network.load(link, out).line.peak;
      const words = (): string =>
        `${portName(out)} → ${portName(oppositePort(link, out))} reaches ${threshold(limit)} of ${bitRate(capacity)}`;
      for (const [of, each] of sums) if (each > 0) yield { of, more: fitting(spare, each), limit: words };
    }
  }
}

function* volumes<Of>({ site, storage }: Plan, by: CountedBy<Of>): Iterable<Limit<Of>> {
  const { limit } = site.policies.volumeFill;
  for (const { volume, usableBytes, bytesKept, writeRate, recordings } of storage.volumes) {
    const { sustainedWrite } = volume;
    const kept = new Map<Of, number>();
    const written = new Map<Of, number>();
    for (const { recording, bytesKept: own, rate } of recordings) {
      const stream = recording.stream === undefined ? undefined : site.streamByName.get(recording.stream);
      if (stream === undefined) continue;
      add(kept, by(stream), own ?? 0);
      add(written, by(stream), rate.peak / 8);
    }
    if (usableBytes !== undefined) {
      const spare = (limit * usableBytes) / 10_000 - bytesKept;
      const words = (): string => `${volume.name} reaches ${threshold(limit)} of ${bytes(usableBytes)}`;
      for (const [of, each] of kept) if (each > 0) yield { of, more: fitting(spare, each), limit: words };
    }
    if (sustainedWrite !== undefined) {
      const spare = sustainedWrite - writeRate.peak;
      const words = (): string => `${volume.name} writes ${bytes(sustainedWrite)}/s at most`;
      for (const [of, each] of written) if (each > 0) yield { of, more: fitting(spare, each), limit: words };
    }
  }
}

function add<Of>(sums: Map<Of, number>, of: Of | undefined, amount: number): void {
  if (of !== undefined) sums.set(of, (sums.get(of) ?? 0) + amount);
}

function* power({ power: sources }: Plan, device: Device): Iterable<Limit<Device>> {
  for (const { device: source, budget, draw, feeds } of sources) {
    const each = feeds.filter(({ to }) => to.device === device).reduce((sum, { allotted }) => sum + allotted, 0);
    if (budget !== undefined && each > 0) {
      const words = (): string => `${source.name} feeds ${watts(budget)} at most`;
      yield { of: device, more: fitting(budget - draw, each), limit: words };
    }
  }
}

/** Free ports like the one where the device is plugged in. */
function* ports({ network }: Plan, device: Device): Iterable<Limit<Device>> {
  for (const own of device.ports) {
    const link = network.topology.linkAt(own);
    const at = link === undefined ? undefined : oppositePort(link, own);
    if (at === undefined || !at.forwards) continue;
    const free = at.device.ports.filter((port) => network.topology.linkAt(port) === undefined && isLike(port, at));
    yield { of: device, more: free.length, limit: () => `${at.device.name} has no further port like ${at.name}` };
  }
}

function isLike(a: Port, b: Port): boolean {
  return (
    a.vlan === b.vlan &&
    a.feeds === b.feeds &&
    a.speed === b.speed &&
    String(a.trunk) === String(b.trunk) &&
    a.native === b.native
  );
}

/** `3 more like this, then core/16 → stable/9 reaches 90 % of 100 Mb/s.` */
export function headroomWords({ more, limit }: Headroom, like = 'this'): string {
  return more === 0 ? `No more like ${like}: ${limit}.` : `${more} more like ${like}, then ${limit}.`;
}
