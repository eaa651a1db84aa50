/**
 * How long each camera goes on when the mains fails.
 *
 * A camera that is recorded goes on while it has power, and every device on the way to the disk, and the recorder; one
 * that is not recorded, while somebody sees it. Where a switch on the way goes dark before the rest and spanning tree has
 * another way, the camera goes on by that. An address that a DHCP server keeps for the camera is needed too, as a camera
 * may start anew, and so is the clock of its VLAN, as footage without the right time is of little use.
 */

import type { Network } from '../network/network.ts';
import type { Device, Site, Stream } from '../site/model.ts';
import type { Supply } from './supply.ts';
import { type Ways, isJoined, wayOf, waysOf, waysWithout } from './ways.ts';

export interface CameraLife {
  readonly camera: Device;
  /** ms; `undefined` where a battery on the way is not said. */
  readonly lasts: number | undefined;
  /**
   * What it needs: itself, what is on the way, where it ends, in this order; empty where nobody gets it. Where its
   * pictures go another way in time, the last of the ways.
   */
  readonly chain: readonly Device[];
  /** Which of them ends first. */
  readonly endsAt: Device | undefined;
  readonly isRecorded: boolean;
  /** ms after which its pictures go another way, as a switch on the one before goes dark. */
  readonly turns: readonly number[];
}

/** What this follows from. */
export interface Watched
  extends
    Pick<
      Site,
      'vlans' | 'devices' | 'deviceByName' | 'cables' | 'streams' | 'streamByName' | 'recordings' | 'volumeByName'
    >,
    Pick<Network, 'topology' | 'copies' | 'waiting'> {}

/** Networks that are computed without what is dark, times the devices and streams of each. */
const MOST_WORK = 30_000;

/** Of each camera that sends something, in the order of the site. */
export function cameraLives(site: Watched, supply: Supply): CameraLife[] {
  const ways = waysOf(site.topology, site.copies, site.waiting);
  const later = laterWays(site, supply);
  const wishes = wishesOf(site);
  return site.devices.flatMap((camera) => {
    if (camera.kind !== 'camera') return [];
    const own = wishes.get(camera);
    if (own === undefined) return [];
    const recorded = own.filter(({ isRecorded }) => isRecorded);
    const lives = (recorded.length > 0 ? recorded : own).flatMap((wish) => {
      const chain = chainOf(site, ways, camera, wish);
      if (chain === undefined) return [];
      let life: Omit<CameraLife, 'camera'> = {
        ...ending(chain, supply),
        chain,
        isRecorded: wish.isRecorded,
        turns: [],
      };
      while (life.lasts !== undefined && life.endsAt?.bridging === true) {
        const turn = life.lasts;
        const next = chainOf(site, later(turn, camera, wish), camera, wish);
        const ends = next === undefined ? undefined : ending(next, supply);
        if (next === undefined || ends === undefined || (ends.lasts ?? Infinity) <= turn) break;
        life = { ...life, ...ends, chain: next, turns: [...life.turns, turn] };
      }
      return [life];
    });
    const [longest = nobody] = lives.sort((a, b) => (b.lasts ?? -1) - (a.lasts ?? -1));
    return [{ camera, ...longest }];
  });
}

const nobody: Omit<CameraLife, 'camera'> = { lasts: 0, chain: [], endsAt: undefined, isRecorded: false, turns: [] };

/** The ways that are left for a camera after so many ms; none where no spanning tree has one in reserve. */
function laterWays(site: Watched, { lasts }: Supply): (time: number, camera: Device, wish: Wish) => Ways {
  const { topology, devices, streams } = site;
  let left = topology.spanningTree.blocked.length === 0 ? 0 : MOST_WORK / (devices.length + streams.length);
  const known = new Map<number, { readonly dead: ReadonlySet<Device>; ways: Ways | undefined }>();
  return (time, camera, { streams: carried, to }) => {
    let own = known.get(time);
    if (own === undefined) {
      const dead = new Set(devices.filter((device) => (lasts(device) ?? Infinity) <= time));
      known.set(time, (own = { dead, ways: undefined }));
    }
    const { dead } = own;
    const stops = [camera, ...carried.slice(1).flatMap(({ source }) => site.deviceByName.get(source ?? '') ?? []), to];
    const isLeft = stops.every((stop, i) => !dead.has(stop) && isJoined(topology, stops[i - 1] ?? stop, stop, dead));
    if (!isLeft) return new Map();
    if (own.ways !== undefined) return own.ways;
    return left-- < 1 ? new Map() : (own.ways = waysWithout(topology, site, dead));
  };
}

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
    const way = from === end ? [end] : wayOf(ways, stream, from, end);
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
