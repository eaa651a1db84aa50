/**
 * How long each camera goes on when the mains fails.
 *
 * A recorded camera goes on while it, every device on the way and the recorder have power; one that is not recorded,
 * while a receiver gets it. Where a switch on the way loses power first and spanning tree has another way, the camera
 * goes on by that. A DHCP server that keeps its address is needed too, as a camera may restart, and so is the clock of
 * its VLAN, as footage without the right time is of little use.
 */

import type { Network } from '../network/network.ts';
import type { Device, Site, Stream } from '../site/model.ts';
import type { Supply } from './supply.ts';
import { type StreamPaths, areCabledTogether, pathOfStream, streamPaths, streamPathsWithout } from './stream-paths.ts';

export interface CameraRuntime {
  readonly camera: Device;
  /** ms; `undefined` where a battery on the way is undeclared. */
  readonly lasts: number | undefined;
  /**
   * The devices that it needs: itself, those on the way, and the one at the end, in this order; empty where nobody
   * receives it. Where its pictures change to another way, the last of the ways.
   */
  readonly chain: readonly Device[];
  /** The device of the chain that loses power first. */
  readonly endsAt: Device | undefined;
  readonly isRecorded: boolean;
  /** ms after which its pictures change to another way, as a switch on the way before loses power. */
  readonly turns: readonly number[];
}

/** The parts of a site and its network that decide this. */
export interface CameraSite
  extends
    Pick<
      Site,
      'vlans' | 'devices' | 'deviceByName' | 'cables' | 'streams' | 'streamByName' | 'recordings' | 'volumeByName'
    >,
    Pick<Network, 'topology' | 'copies' | 'waiting'> {}

/** The most networks that are computed without dark devices, times the devices and streams of each. */
const MOST_WORK = 30_000;

/** The life of each camera that sends something, in the order of the site. */
export function cameraRuntimes(site: CameraSite, supply: Supply): CameraRuntime[] {
  const ways = streamPaths(site.topology, site.copies, site.waiting);
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
      let life: Omit<CameraRuntime, 'camera'> = {
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

const nobody: Omit<CameraRuntime, 'camera'> = { lasts: 0, chain: [], endsAt: undefined, isRecorded: false, turns: [] };

/** The ways that are left for a camera after a time in ms; none where spanning tree keeps none in reserve. */
function laterWays(site: CameraSite, { lasts }: Supply): (time: number, camera: Device, wish: Wish) => StreamPaths {
  const { topology, devices, streams } = site;
  let left = topology.spanningTree.blocked.length === 0 ? 0 : MOST_WORK / (devices.length + streams.length);
  const known = new Map<number, { readonly dead: ReadonlySet<Device>; ways: StreamPaths | undefined }>();
  return (time, camera, { streams: carried, to }) => {
    let own = known.get(time);
    if (own === undefined) {
      const dead = new Set(devices.filter((device) => (lasts(device) ?? Infinity) <= time));
      known.set(time, (own = { dead, ways: undefined }));
    }
    const { dead } = own;
    const stops = [camera, ...carried.slice(1).flatMap(({ source }) => site.deviceByName.get(source ?? '') ?? []), to];
    const isLeft = stops.every(
      (stop, i) => !dead.has(stop) && areCabledTogether(topology, stops[i - 1] ?? stop, stop, dead),
    );
    if (!isLeft) return new Map();
    if (own.ways !== undefined) return own.ways;
    return left-- < 1 ? new Map() : (own.ways = streamPathsWithout(topology, site, dead));
  };
}

/** A stream that is wanted at `to`, and the streams that it carries, the camera's own stream first. */
interface Wish {
  readonly streams: readonly Stream[];
  readonly to: Device;
  readonly isRecorded: boolean;
}

function wishesOf(site: CameraSite): Map<Device, Wish[]> {
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

/** The stream with all that it carries; carried streams come first. */
function carriedBy({ streamByName }: CameraSite, stream: Stream): Stream[] {
  const found: Stream[] = [];
  for (let at: Stream | undefined = stream; at !== undefined && !found.includes(at);) {
    found.unshift(at);
    at = at.carries === undefined ? undefined : streamByName.get(at.carries);
  }
  return found;
}

function chainOf(site: CameraSite, ways: StreamPaths, camera: Device, { streams, to }: Wish): Device[] | undefined {
  const chain = new Set<Device>([camera]);
  for (const [index, stream] of streams.entries()) {
    const from = site.deviceByName.get(stream.source ?? '');
    const next = streams[index + 1]?.source;
    const end = next === undefined ? to : site.deviceByName.get(next);
    if (from === undefined || end === undefined) return undefined;
    const way = from === end ? [end] : pathOfStream(ways, stream, from, end);
    if (way === undefined) return undefined;
    for (const device of way) chain.add(device);
  }
  for (const device of [camera, to])
    for (const gives of [...addressGivers(site, device), ...clocks(site, device)]) chain.add(gives);
  return [...chain];
}

/** The DHCP servers that keep an address for the device. */
function addressGivers(site: CameraSite, device: Device): Device[] {
  return device.ports.flatMap((port) => {
    const link = port.reserved ? site.topology.linkAt(port) : undefined;
    const gateway = link?.untagged?.vlan?.gateway;
    const own = gateway === undefined ? undefined : site.deviceByName.get(gateway);
    return own === undefined ? [] : [own];
  });
}

/** The devices that it sets its clock by. */
function clocks({ topology, deviceByName }: CameraSite, device: Device): Device[] {
  return device.ports.flatMap((port) => {
    const clock = topology.linkAt(port)?.untagged?.vlan?.clock;
    const own = clock === undefined ? undefined : deviceByName.get(clock);
    return own === undefined ? [] : [own];
  });
}

/** How long all devices of a chain have power, and which ends first; of several, the last in the chain. */
function ending(chain: readonly Device[], { lasts }: Supply): Pick<CameraRuntime, 'lasts' | 'endsAt'> {
  let first: { lasts: number | undefined; endsAt: Device | undefined } = { lasts: Infinity, endsAt: undefined };
  for (const device of chain) {
    const own = lasts(device);
    // An unknown time may be shorter than any but zero.
    const isFirst = own === undefined ? first.lasts !== 0 : first.lasts !== undefined && own <= first.lasts;
    if (isFirst || own === 0) first = { lasts: own, endsAt: device };
  }
  return first;
}
