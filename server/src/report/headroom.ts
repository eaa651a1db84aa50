/** How many more streams or cameras like one of the site's it takes before the first limit, and which limit that is. */

import { loadOf } from '../network/crossings.ts';
import { far, outOf } from '../network/link.ts';
import type { Plan } from '../plan.ts';
import { LINK_LIMIT, VOLUME_LIMIT } from '../site/limits.ts';
import { type Device, type Port, type Stream, portName } from '../site/model.ts';
import { bitRate, bytes, threshold, watts } from '../text/words.ts';

export interface Headroom {
  /** How many more fit: 0 where the limit is reached. */
  readonly more: number;
  /** The limit that the next one would pass. */
  readonly limit: string;
}

/** One more stream with the same source and receivers. `undefined` where nothing limits it. */
export function streamHeadroom(plan: Plan, stream: Stream): Headroom | undefined {
  return first([...links(plan, [stream], undefined), ...volumes(plan, [stream])]);
}

/** One more device like this at the same switch, with streams and recordings as this one has. */
export function deviceHeadroom(plan: Plan, device: Device): Headroom | undefined {
  const own = streamsOf(plan, device);
  return first([...ports(plan, device), ...power(plan, device), ...links(plan, own, device), ...volumes(plan, own)]);
}

function first(limits: readonly Headroom[]): Headroom | undefined {
  let least: Headroom | undefined;
  for (const limit of limits) if (least === undefined || limit.more < least.more) least = limit;
  return least;
}

function fitting(spare: number, each: number): number {
  return Math.max(0, Math.floor(spare / each));
}

/** What a device sends, and what others make of it. */
function streamsOf({ site }: Plan, device: Device): Stream[] {
  const found = new Set(site.streams.filter(({ source }) => source === device.name));
  for (let before = -1; before !== found.size; ) {
    before = found.size;
    const names = new Set([...found].map(({ name }) => name));
    for (const stream of site.streams) if (stream.carries !== undefined && names.has(stream.carries)) found.add(stream);
  }
  return [...found];
}

/** The links that the streams share with others: `beside` has a cable of its own, as the next one will. */
function* links({ site, network }: Plan, streams: readonly Stream[], beside: Device | undefined): Iterable<Headroom> {
  const limit = site.policies.linkLoad.limit ?? LINK_LIMIT;
  for (const link of network.topology.links) {
    if (link.capacity === undefined || link.a.device === beside || link.b.device === beside) continue;
    for (const out of [link.a, link.b]) {
      const direction = outOf(link, out);
      let each = 0;
      for (const crossing of network.crossings.at(direction)) {
        const rates = network.rates[crossing.stream.index];
        if (rates !== undefined && streams.includes(crossing.stream)) each += loadOf(crossing, rates).line.peak;
      }
      if (each === 0) continue;
      const spare = (limit * link.capacity) / 10_000 - (network.loads[direction]?.line.peak ?? 0);
      const name = `${portName(out)} → ${portName(far(link, out))}`;
      yield { more: fitting(spare, each), limit: `${name} reaches ${threshold(limit)} of ${bitRate(link.capacity)}` };
    }
  }
}

function* volumes({ site, storage }: Plan, streams: readonly Stream[]): Iterable<Headroom> {
  const limit = site.policies.volumeFill.limit ?? VOLUME_LIMIT;
  const names = new Set<string | undefined>(streams.map(({ name }) => name));
  for (const { volume, usableBytes, bytesKept, writeRate, recordings } of storage.volumes) {
    const own = recordings.filter(({ recording }) => names.has(recording.stream));
    const kept = own.reduce((sum, { bytesKept: each }) => sum + (each ?? 0), 0);
    if (usableBytes !== undefined && kept > 0) {
      const spare = (limit * usableBytes) / 10_000 - bytesKept;
      yield { more: fitting(spare, kept), limit: `${volume.name} reaches ${threshold(limit)} of ${bytes(usableBytes)}` };
    }
    const written = own.reduce((sum, { rate }) => sum + rate.peak / 8, 0);
    if (volume.sustainedWrite !== undefined && written > 0) {
      const spare = volume.sustainedWrite - writeRate.peak;
      yield { more: fitting(spare, written), limit: `${volume.name} writes ${bytes(volume.sustainedWrite)}/s at most` };
    }
  }
}

function* power({ power: sources }: Plan, device: Device): Iterable<Headroom> {
  for (const { device: source, budget, draw, feeds } of sources) {
    const each = feeds.filter(({ to }) => to.device === device).reduce((sum, { allotted }) => sum + allotted, 0);
    if (budget !== undefined && each > 0) {
      yield { more: fitting(budget - draw, each), limit: `${source.name} feeds ${watts(budget)} at most` };
    }
  }
}

/** Free ports like the one that the device is at. */
function* ports({ network }: Plan, device: Device): Iterable<Headroom> {
  for (const own of device.ports) {
    const link = network.topology.linkOf[own.index];
    const at = link === undefined ? undefined : far(link, own);
    if (at === undefined || !at.device.bridging) continue;
    const free = at.device.ports.filter((port) => network.topology.linkOf[port.index] === undefined && isLike(port, at));
    yield { more: free.length, limit: `${at.device.name} has no further port like ${at.name}` };
  }
}

function isLike(a: Port, b: Port): boolean {
  return a.vlan === b.vlan && a.feeds === b.feeds && a.speed === b.speed && String(a.trunk) === String(b.trunk) && a.native === b.native;
}

/** `3 more like this, then core/16 → stable/9 reaches 90 % of 100 Mb/s.` */
export function headroomWords({ more, limit }: Headroom): string {
  return more === 0 ? `No more like this: ${limit}.` : `${more} more like this, then ${limit}.`;
}
