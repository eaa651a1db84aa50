/** Puts the items of all files together as one site. */

import { ByName, type Named } from './by-name.ts';
import type { Item } from './item.ts';
import { LINK_LIMIT, LINK_WARN, VOLUME_LIMIT } from './limits.ts';
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

function once<T extends object>(make: (item: Item) => T): (item: Item) => T {
  return (item) => factOf(item, make);
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

  const named = <T extends Numbered>(
    section: SectionName,
    before: ByName<T> | undefined,
    make: (item: Item) => T,
  ): ByName<T> =>
    before !== undefined && kept(section) ? before : numbered(ByName.of(bySection[section].map(make), before));
  const vlans = named('vlans', previous?.vlanByName, once(read.readVlan));
  const devices = named('devices', previous?.deviceByName, deviceReader(bySection.devices, previous));
  const streams = named('streams', previous?.streamByName, once(read.readStream));
  const volumes = named('volumes', previous?.volumeByName, once(read.readVolume));
  const recordings = named('recordings', previous?.recordingByName, once(read.readRecording));
  const media = previous !== undefined && kept('streams') ? previous : resolveMedia(streams);
  const isNamedAlike =
    previous !== undefined &&
    vlans.isNamedAs(previous.vlanByName) &&
    devices.isNamedAs(previous.deviceByName) &&
    streams.isNamedAs(previous.streamByName) &&
    volumes.isNamedAs(previous.volumeByName) &&
    recordings.isNamedAs(previous.recordingByName);
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
    vlanByName: vlans,
    deviceByName: devices,
    streamByName: streams,
    volumeByName: volumes,
    recordingByName: recordings,
    media: media.media,
    mediaOf: ({ index }) => media.media[index] ?? NOTHING,
    carriedInCircle: media.carriedInCircle,
  };
}

function faultyOf(items: readonly Item[], previous: Site | undefined): readonly Item[] {
  const faulty = items.filter((item) => item.faulty);
  return previous !== undefined && isSameList(previous.faulty, faulty) ? previous.faulty : faulty;
}

function grouped(items: readonly Item[]): Record<SectionName, readonly Item[]> {
  const bySection: Record<SectionName, Item[]> = {
    site: [],
    vlans: [],
    devices: [],
    cables: [],
    streams: [],
    volumes: [],
    recordings: [],
    policies: [],
    lint: [],
  };
  for (const item of items) bySection[item.section].push(item);
  return bySection;
}

function isSameList(a: readonly unknown[], b: readonly unknown[]): boolean {
  if (a.length !== b.length) return false;
  for (let i = 0; i < a.length; i++) if (a[i] !== b[i]) return false;
  return true;
}

interface Numbered extends Named {
  index: number;
}

function numbered<T extends Numbered>(named: ByName<T>): ByName<T> {
  for (let index = 0; index < named.list.length; index++) {
    const one = named.list[index];
    if (one !== undefined) one.index = index;
  }
  return named;
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
  const linkLoad = threshold('link-load');
  const volumeFill = threshold('volume-fill');
  return {
    linkLoad: { warn: linkLoad.warn ?? LINK_WARN, limit: linkLoad.limit ?? LINK_LIMIT },
    volumeFill: { warn: volumeFill.warn, limit: volumeFill.limit ?? VOLUME_LIMIT },
    retention: items.filter((item) => item.name === 'retention').flatMap((item) => factOf(item, read.readRetention)),
  };
}

function lintOf(items: readonly Item[]): Lint {
  return {
    // Of two for one rule the first counts, as of two items with one name.
    severities: new Map(
      items
        .filter((item) => item.name === 'rules')
        .flatMap((item) => factOf(item, read.readSeverities))
        .reverse(),
    ),
    acceptances: items.filter((item) => item.name === 'accept').flatMap((item) => factOf(item, read.readAcceptances)),
  };
}

/** What each stream consists of: its own video and audio, and what it lacks from the stream that it carries. */
function resolveMedia(streams: ByName<Stream>): { media: Media[]; carriedInCircle: Stream[] } {
  const media: Media[] = [];
  const carriedInCircle: Stream[] = [];
  const open = new Set<Stream>();
  const resolve = (stream: Stream): void => {
    if (media[stream.index] !== undefined) return;
    const onto = stream.carries === undefined ? undefined : streams.get(stream.carries);
    const below = onto === undefined ? NOTHING : media[onto.index];
    if (below !== undefined) {
      media[stream.index] = laidOver(stream, below);
      return;
    }
    // Nothing is carried on round a circle. The walk is a loop, since a chain may be as long as the site.
    const chain: Stream[] = [];
    let current: Stream | undefined = stream;
    while (current !== undefined && media[current.index] === undefined && !open.has(current)) {
      open.add(current);
      chain.push(current);
      current = current.carries === undefined ? undefined : streams.get(current.carries);
    }
    if (current !== undefined && open.has(current))
      for (const link of chain.slice(chain.indexOf(current))) carriedInCircle.push(link);
    let carried: Media = (current === undefined ? undefined : media[current.index]) ?? NOTHING;
    for (const link of chain.reverse()) {
      carried = laidOver(link, carried);
      media[link.index] = carried;
      open.delete(link);
    }
  };
  for (const stream of streams.list) resolve(stream);
  return { media, carriedInCircle };
}

const NOTHING: Media = { video: undefined, audio: undefined };

function laidOver({ video, audio }: Stream, carried: Media): Media {
  return { video: over(video, carried.video), audio: overAudio(audio, carried.audio) };
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
