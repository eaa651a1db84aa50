/** Puts the items of all files together as one site. */

import type { Item } from './item.ts';
import type { Audio, Cable, Device, Lint, Media, Policies, Port, Site, Stream, Threshold, Video } from './model.ts';
import * as read from './read.ts';
import { takenOver } from './same-wiring.ts';
import { SECTION_NAMES, type SectionName } from './shape.ts';

/** A few words declare a thousand ports, so a short text could declare more than fit into memory. */
const MOST_PORTS = 250_000;

const UNSET: Threshold = { warn: undefined, limit: undefined };

/** What an item says: read once, and kept for as long as the item stands. */
function factOf<T extends object>(item: Item, make: (item: Item) => T): T {
  item.fact ??= make(item);
  return item.fact as T;
}

/**
 * Never fails: of two items with one name the first counts, and a name that leads nowhere is left unresolved.
 * Whatever is as it was in `previous` is taken from there, as the very same lists and maps.
 */
export function assemble(items: readonly Item[], previous?: Site): Site {
  const before = previous?.sections;
  const bySection = grouped(items);
  for (const section of SECTION_NAMES) {
    const was = before?.[section];
    if (was !== undefined && isSameList(was, bySection[section])) bySection[section] = was;
  }
  const kept = (...names: SectionName[]): boolean => names.every((name) => before?.[name] === bySection[name]);

  const vlans = named(bySection.vlans, (item) => factOf(item, read.readVlan), kept('vlans') ? [previous?.vlans, previous?.vlanByName] : []);
  const devices = named(bySection.devices, deviceReader(bySection.devices, previous), kept('devices') ? [previous?.devices, previous?.deviceByName] : []);
  const streams = named(bySection.streams, (item) => factOf(item, read.readStream), kept('streams') ? [previous?.streams, previous?.streamByName] : []);
  const volumes = named(bySection.volumes, (item) => factOf(item, read.readVolume), kept('volumes') ? [previous?.volumes, previous?.volumeByName] : []);
  const recordings = named(bySection.recordings, (item) => factOf(item, read.readRecording), kept('recordings') ? [previous?.recordings, previous?.recordingByName] : []);
  const media = previous !== undefined && kept('streams') ? previous : resolveMedia(streams.list, streams.byName);
  const lists = [vlans.list, devices.list, streams.list, volumes.list, recordings.list];
  const isNamedAlike = previous !== undefined && namedLists(previous).every((list, i) => isNamedAs(list, lists[i] ?? []));
  return {
    name: fixedText(bySection.site, 'name'),
    timezone: fixedText(bySection.site, 'timezone'),
    items,
    sections: bySection,
    faulty: faultyOf(items, previous),
    vlans: vlans.list,
    devices: devices.list,
    ports: previous !== undefined && kept('devices') ? previous.ports : portsOf(devices.list),
    cables: previous !== undefined && kept('cables') ? previous.cables : cablesOf(bySection.cables),
    streams: streams.list,
    volumes: volumes.list,
    recordings: recordings.list,
    policies: previous !== undefined && kept('policies') ? previous.policies : policiesOf(bySection.policies),
    lint: previous !== undefined && kept('lint') ? previous.lint : lintOf(bySection.lint),
    names: isNamedAlike ? previous.names : {},
    vlanByName: vlans.byName,
    deviceByName: devices.byName,
    streamByName: streams.byName,
    volumeByName: volumes.byName,
    recordingByName: recordings.byName,
    media: media.media,
    carriedInCircle: media.carriedInCircle,
  };
}

type NamedList = readonly { readonly name: string }[];

function namedLists({ vlans, devices, streams, volumes, recordings }: Site): NamedList[] {
  return [vlans, devices, streams, volumes, recordings];
}

function isNamedAs(before: NamedList, list: NamedList): boolean {
  if (before === list) return true;
  return before.length === list.length && list.every(({ name }, i) => name === before[i]?.name);
}

function faultyOf(items: readonly Item[], previous: Site | undefined): readonly Item[] {
  const faulty = items.filter((item) => item.faulty);
  return previous !== undefined && isSameList(previous.faulty, faulty) ? previous.faulty : faulty;
}

function grouped(items: readonly Item[]): Record<SectionName, readonly Item[]> {
  const bySection: Record<SectionName, Item[]> = {
    site: [], vlans: [], devices: [], cables: [], streams: [], volumes: [], recordings: [], policies: [], lint: [],
  };
  for (const item of items) bySection[item.section].push(item);
  return bySection;
}

function isSameList(a: readonly unknown[], b: readonly unknown[]): boolean {
  if (a.length !== b.length) return false;
  for (let i = 0; i < a.length; i++) if (a[i] !== b[i]) return false;
  return true;
}

interface Named<T> {
  readonly list: readonly T[];
  readonly byName: ReadonlyMap<string, T>;
}

function named<T extends { readonly name: string; index: number }>(
  items: readonly Item[],
  make: (item: Item) => T,
  [keptList, keptByName]: readonly [] | readonly [readonly T[] | undefined, ReadonlyMap<string, T> | undefined],
): Named<T> {
  if (keptList !== undefined && keptByName !== undefined) return { list: keptList, byName: keptByName };
  const byName = new Map<string, T>();
  const list: T[] = [];
  for (const item of items) {
    const fact = make(item);
    if (byName.has(fact.name)) continue;
    fact.index = list.length;
    byName.set(fact.name, fact);
    list.push(fact);
  }
  return { list, byName };
}

/**
 * Reads devices in their order; those whose ports would be too many for one site are read without any. What was a
 * host of the same name and wiring before stays the same object.
 */
function deviceReader(items: readonly Item[], previous: Site | undefined): (item: Item) => Device {
  let left = MOST_PORTS;
  let present: ReadonlySet<Item> | undefined;
  const isGone = (item: Item): boolean => !(present ??= new Set(items)).has(item);
  const readOne = (item: Item): Device => {
    const device = read.readDevice(item);
    const before = previous?.deviceByName.get(item.name);
    const isReplaced = before !== undefined && before.item.fact === before && isGone(before.item);
    return isReplaced && takenOver(before, device) ? before : device;
  };
  return (item) => {
    let count = portCounts.get(item);
    if (count === undefined) portCounts.set(item, (count = read.portCount(item)));
    left -= count;
    if (left >= 0) return factOf(item, readOne);
    let bare = bareDevices.get(item);
    if (bare === undefined) bareDevices.set(item, (bare = read.readDevice(item, false)));
    return bare;
  };
}

const portCounts = new WeakMap<Item, number>();
const bareDevices = new WeakMap<Item, Device>();

function portsOf(devices: readonly Device[]): Port[] {
  const ports: Port[] = [];
  for (const device of devices) {
    for (const port of device.ports) {
      port.index = ports.length;
      ports.push(port);
    }
  }
  return ports;
}

function cablesOf(items: readonly Item[]): Cable[] {
  return items.map((item, index) => {
    const cable = factOf(item, read.readCable);
    cable.index = index;
    return cable;
  });
}

function fixedText(items: readonly Item[], key: string): string | undefined {
  const data = items.find((item) => item.name === key)?.data;
  return typeof data === 'string' || typeof data === 'number' ? String(data) : undefined;
}

function policiesOf(items: readonly Item[]): Policies {
  const threshold = (key: string): Threshold => {
    const item = items.find((candidate) => candidate.name === key);
    return item === undefined ? UNSET : factOf(item, read.readThreshold);
  };
  return {
    linkLoad: threshold('link-load'),
    volumeFill: threshold('volume-fill'),
    retention: items.filter((item) => item.name === 'retention').flatMap((item) => factOf(item, read.readRetention)),
  };
}

function lintOf(items: readonly Item[]): Lint {
  return {
    // Of two for one rule the first counts, as of two items with one name.
    severities: new Map(items.filter((item) => item.name === 'rules').flatMap((item) => factOf(item, read.readSeverities)).reverse()),
    acceptances: items.filter((item) => item.name === 'accept').flatMap((item) => factOf(item, read.readAcceptances)),
  };
}

/** What each stream consists of: its own video and audio, and what it lacks from the stream that it carries. */
function resolveMedia(streams: readonly Stream[], byName: ReadonlyMap<string, Stream>): { media: Media[]; carriedInCircle: Stream[] } {
  const media: Media[] = [];
  const carriedInCircle: Stream[] = [];
  const open = new Set<Stream>();
  const resolve = (stream: Stream): Media => {
    const known = media[stream.index];
    if (known !== undefined) return known;
    // Nothing is carried on round a circle. The walk is a loop, since a chain may be as long as the site.
    const chain: Stream[] = [];
    let current: Stream | undefined = stream;
    while (current !== undefined && media[current.index] === undefined && !open.has(current)) {
      open.add(current);
      chain.push(current);
      current = current.carries === undefined ? undefined : byName.get(current.carries);
    }
    if (current !== undefined && open.has(current)) for (const link of chain.slice(chain.indexOf(current))) carriedInCircle.push(link);
    let carried: Media = (current === undefined ? undefined : media[current.index]) ?? { video: undefined, audio: undefined };
    for (const link of chain.reverse()) {
      carried = { video: over(link.video, carried.video), audio: overAudio(link.audio, carried.audio) };
      media[link.index] = carried;
      open.delete(link);
    }
    return carried;
  };
  for (const stream of streams) resolve(stream);
  return { media, carriedInCircle };
}

/** Given anew key by key: what is not said stays as it is carried. */
function over(own: Video | undefined, carried: Video | undefined): Video | undefined {
  if (own === undefined || carried === undefined) return own ?? carried;
  return {
    codec: own.codec ?? carried.codec,
    width: own.width ?? carried.width,
    height: own.height ?? carried.height,
    frameRate: own.frameRate ?? carried.frameRate,
    rate: own.rate ?? carried.rate,
    keyframeInterval: own.keyframeInterval ?? carried.keyframeInterval,
  };
}

function overAudio(own: Audio | undefined, carried: Audio | undefined): Audio | undefined {
  if (own === undefined || carried === undefined) return own ?? carried;
  // Another codec samples at a rate of its own.
  const recoded = own.codec !== undefined && own.codec !== carried.codec;
  return {
    codec: own.codec ?? carried.codec,
    rate: own.rate ?? carried.rate,
    sampleRate: own.sampleRate ?? (recoded ? undefined : carried.sampleRate),
    channels: own.channels ?? carried.channels,
  };
}
