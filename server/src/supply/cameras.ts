/**
 * How long each camera goes on when the mains fails.
 *
 * A camera that is recorded goes on while it has power, and every device on the way to the disk, and the recorder; one
 * that is not recorded, while somebody sees it. Traffic is taken to keep its way: whether another switch takes over is
 * another question. An address that a DHCP server keeps for the camera is needed too, as a camera may start anew, and so is
 * the clock of its VLAN, as footage without the right time is of little use.
 */

import type { Network } from '../network/network.ts';
import type { Device, Port, Site, Stream } from '../site/model.ts';
import { oppositePort, type Link } from '../network/link.ts';
import type { Supply } from './supply.ts';

export interface CameraLife {
  readonly camera: Device;
  /** ms; `undefined` where a battery on the way is not said. */
  readonly lasts: number | undefined;
  /** What it needs: itself, what is on the way, where it ends, in this order; empty where nobody gets it. */
  readonly chain: readonly Device[];
  /** Which of them ends first. */
  readonly endsAt: Device | undefined;
  readonly isRecorded: boolean;
}

/** What this follows from. */
export interface Watched
  extends
    Pick<Site, 'devices' | 'deviceByName' | 'vlanByName' | 'streams' | 'streamByName' | 'recordings' | 'volumeByName'>,
    Pick<Network, 'topology' | 'copies' | 'waiting' | 'delivery'> {}

/** Of each camera that sends something, in the order of the site. */
export function cameraLives(site: Watched, supply: Supply): CameraLife[] {
  const ways = waysOf(site);
  const wishes = wishesOf(site);
  return site.devices.flatMap((camera) => {
    if (camera.kind !== 'camera') return [];
    const own = wishes.get(camera);
    if (own === undefined) return [];
    const recorded = own.filter(({ isRecorded }) => isRecorded);
    const lives = (recorded.length > 0 ? recorded : own).flatMap((wish) => {
      const chain = chainOf(site, ways, camera, wish);
      return chain === undefined ? [] : [{ ...ending(chain, supply), chain, isRecorded: wish.isRecorded }];
    });
    const [longest = nobody] = lives.sort((a, b) => (b.lasts ?? -1) - (a.lasts ?? -1));
    return [{ camera, ...longest }];
  });
}

const nobody: Omit<CameraLife, 'camera'> = { lasts: 0, chain: [], endsAt: undefined, isRecorded: false };

/** A stream that somebody wants who is at `to`, and what it carries, the camera's own stream first. */
interface Wish {
  readonly streams: readonly Stream[];
  readonly to: Device;
  readonly isRecorded: boolean;
}

function wishesOf(site: Watched): Map<Device, Wish[]> {
  const found = new Map<Device, Wish[]>();
  const add = (stream: Stream, to: Device | undefined, isRecorded: boolean): void => {
    const streams = carriedBy(site, stream);
    const [first] = streams;
    const camera = first?.source === undefined ? undefined : site.deviceByName.get(first.source);
    if (camera === undefined || to === undefined) return;
    const wishes = found.get(camera);
    if (wishes === undefined) found.set(camera, [{ streams, to, isRecorded }]);
    else wishes.push({ streams, to, isRecorded });
  };
  for (const { stream, volume } of site.recordings) {
    const own = stream === undefined ? undefined : site.streamByName.get(stream);
    const host = volume === undefined ? undefined : site.volumeByName.get(volume)?.host;
    if (own !== undefined && host !== undefined) add(own, site.deviceByName.get(host), true);
  }
  for (const stream of site.streams)
    for (const receiver of stream.receivers) add(stream, site.deviceByName.get(receiver), false);
  return found;
}

/** The stream with all that it carries, what is carried first. */
function carriedBy({ streamByName }: Watched, stream: Stream): Stream[] {
  const found: Stream[] = [];
  for (let at: Stream | undefined = stream; at !== undefined && !found.includes(at);) {
    found.unshift(at);
    at = at.carries === undefined ? undefined : streamByName.get(at.carries);
  }
  return found;
}

function chainOf(site: Watched, ways: Ways, camera: Device, { streams, to }: Wish): Device[] | undefined {
  const chain = new Set<Device>([camera]);
  for (const [index, stream] of streams.entries()) {
    const from = site.deviceByName.get(stream.source ?? '');
    const next = streams[index + 1]?.source;
    const end = next === undefined ? to : site.deviceByName.get(next);
    if (from === undefined || end === undefined) return undefined;
    const way = from === end ? [end] : wayOf(ways.get(stream) ?? new Map(), from, end);
    if (way === undefined) return undefined;
    for (const device of way) chain.add(device);
  }
  for (const device of [camera, to])
    for (const gives of [...addressGivers(site, device), ...clocks(site, device)]) chain.add(gives);
  return [...chain];
}

/** What keeps an address for it by DHCP. */
function addressGivers(site: Watched, device: Device): Device[] {
  return device.ports.flatMap((port) => {
    const link = port.reserved ? site.topology.linkAt(port) : undefined;
    const gateway = link?.untagged?.vlan?.gateway;
    const own = gateway === undefined ? undefined : site.deviceByName.get(gateway);
    return own === undefined ? [] : [own];
  });
}

/** What it sets its clock by. */
function clocks({ topology, deviceByName }: Watched, device: Device): Device[] {
  return device.ports.flatMap((port) => {
    const clock = topology.linkAt(port)?.untagged?.vlan?.clock;
    const own = clock === undefined ? undefined : deviceByName.get(clock);
    return own === undefined ? [] : [own];
  });
}

/** By stream, from which device it goes on to which. */
type Ways = Map<Stream, Map<Device, Set<Device>>>;

function waysOf({ topology, copies, waiting }: Watched): Ways {
  const ways: Ways = new Map();
  const cross = (link: Link, out: Port): void => {
    for (const { stream, untagged, tagged } of [...copies(link, out), ...waiting(link, out)]) {
      if (untagged + tagged === 0) continue;
      let way = ways.get(stream);
      if (way === undefined) ways.set(stream, (way = new Map()));
      const to = way.get(out.device) ?? new Set();
      way.set(out.device, to.add(oppositePort(link, out).device));
    }
  };
  for (const link of topology.links) for (const out of [link.a, link.b]) cross(link, out);
  return ways;
}

/** The devices from one to the other, both included. */
function wayOf(next: ReadonlyMap<Device, ReadonlySet<Device>>, from: Device, to: Device): Device[] | undefined {
  const cameFrom = new Map<Device, Device | undefined>([[from, undefined]]);
  for (const at of cameFrom.keys()) {
    if (at === to) break;
    for (const beyond of next.get(at) ?? []) if (!cameFrom.has(beyond)) cameFrom.set(beyond, at);
  }
  if (!cameFrom.has(to)) return undefined;
  const way: Device[] = [];
  for (let at: Device | undefined = to; at !== undefined; at = cameFrom.get(at)) way.unshift(at);
  return way;
}

/** For how long all of a chain have power; which ends first, the last of those where several do. */
function ending(chain: readonly Device[], { lasts }: Supply): Pick<CameraLife, 'lasts' | 'endsAt'> {
  let first: { lasts: number | undefined; endsAt: Device | undefined } = { lasts: Infinity, endsAt: undefined };
  for (const device of chain) {
    const own = lasts(device);
    // What is not known may be less than anything but nothing.
    const isFirst = own === undefined ? first.lasts !== 0 : first.lasts !== undefined && own <= first.lasts;
    if (isFirst || own === 0) first = { lasts: own, endsAt: device };
  }
  return first;
}
