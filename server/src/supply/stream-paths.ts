/** Which devices each stream passes: now, and once some have gone dark and spanning tree has found another way. */

import { perKey, perObject } from '../memo.ts';
import { type Link, oppositePort } from '../network/link.ts';
import { type StreamCopies, router } from '../network/routes.ts';
import { type Topology, wiringOf } from '../network/wiring.ts';
import type { Device, Port, Site, Stream } from '../site/model.ts';

/** By stream, the devices to which each device passes it on. */
export type StreamPaths = ReadonlyMap<Stream, ReadonlyMap<Device, ReadonlySet<Device>>>;

type CopiesOf = (link: Link, out: Port) => readonly StreamCopies[];

/** @param sometimes the copies that cross a link only while a screen shows them */
export function streamPaths({ links }: Pick<Topology, 'links'>, always: CopiesOf, sometimes: CopiesOf): StreamPaths {
  const ways = new Map<Stream, Map<Device, Set<Device>>>();
  const cross = (link: Link, out: Port): void => {
    for (const { stream, untagged, tagged } of [...always(link, out), ...sometimes(link, out)]) {
      if (untagged + tagged === 0) continue;
      let way = ways.get(stream);
      if (way === undefined) ways.set(stream, (way = new Map()));
      const to = way.get(out.device) ?? new Set();
      way.set(out.device, to.add(oppositePort(link, out).device));
    }
  };
  for (const link of links) for (const out of [link.a, link.b]) cross(link, out);
  return ways;
}

/** The devices from one to the other that a stream passes, both included. */
export function pathOfStream(ways: StreamPaths, stream: Stream, from: Device, to: Device): Device[] | undefined {
  const next = ways.get(stream);
  const cameFrom = new Map<Device, Device | undefined>([[from, undefined]]);
  for (const at of cameFrom.keys()) {
    if (at === to) break;
    for (const beyond of next?.get(at) ?? []) if (!cameFrom.has(beyond)) cameFrom.set(beyond, at);
  }
  if (!cameFrom.has(to)) return undefined;
  const way: Device[] = [];
  for (let at: Device | undefined = to; at !== undefined; at = cameFrom.get(at)) way.unshift(at);
  return way;
}

type Routed = Pick<Site, 'vlans' | 'devices' | 'deviceByName' | 'cables' | 'streams'>;

/** The ways that are left without some devices. */
export function streamPathsWithout(topology: Topology, site: Routed, dead: ReadonlySet<Device>): StreamPaths {
  const { links, route } = routerWithout(topology)(site, dead);
  const { copies, chosen } = route(site.streams);
  return streamPaths({ links }, copies, chosen);
}

/** The router of the wiring without some devices. While the wiring stays, only the streams that change are routed again. */
const routerWithout = perObject((_: Topology) =>
  perKey(
    (_site: Routed, dead: ReadonlySet<Device>) => [...dead].map(({ name }) => name).join(),
    ({ vlans, devices, deviceByName, cables }, dead) => {
      const wiring = wiringOf({ vlans, devices, deviceByName, cables, failed: { cables: new Set(), devices: dead } });
      return { links: wiring.topology.links, route: router(wiring, deviceByName) };
    },
  ),
);

/** Whether cables still lead from one device to the other, whether or not frames may take them. */
export function areCabledTogether(topology: Topology, from: Device, to: Device, dead: ReadonlySet<Device>): boolean {
  const around = neighboursOf(topology);
  const seen = new Set([from]);
  for (const at of seen) {
    if (at === to) return true;
    const isOnWay = at === from || at.bridging || at.routing;
    if (isOnWay) for (const next of around.get(at) ?? []) if (!dead.has(next)) seen.add(next);
  }
  return false;
}

const neighboursOf = perObject(({ links }: Topology) => {
  const found = new Map<Device, Device[]>();
  const add = (at: Device, next: Device): void => {
    const own = found.get(at);
    if (own === undefined) found.set(at, [next]);
    else own.push(next);
  };
  for (const { a, b } of links) {
    add(a.device, b.device);
    add(b.device, a.device);
  }
  return found;
});
