/** Puts the items of all files together as one site. */

import { lastList, lastResult, perObject } from '../memo.ts';
import type { Item } from './item.ts';
import { AIR_LIMIT, AIR_WARN, LINK_LIMIT, LINK_WARN, VOLUME_LIMIT } from './limits.ts';
import { resolveMedia } from './media.ts';
import type { Device, Lint, Policies, Site, Threshold } from './model.ts';
import { portCount as countPorts } from './port-names.ts';
import * as read from './read.ts';
import { readDevice as readItemOfDevice } from './read-device.ts';
import { SECTION_NAMES, type SectionName } from './shape.ts';
import { broadcastRate } from './television/broadcast.ts';
import * as television from './television/read.ts';
import type { ChannelPlan } from '../standards/television/channel-plan.ts';

/** A few words declare a thousand ports, so a short text could declare more than fit into memory. */
const MOST_PORTS = 250_000;

const readVlan = perObject(read.readVlan);
const readRack = perObject(read.readRack);
const readDevice = perObject((item: Item) => readItemOfDevice(item));
const readDeviceWithoutPorts = perObject((item: Item) => readItemOfDevice(item, false));
const portCount = perObject(countPorts);
const readCable = perObject(read.readCable);
const readMultiplex = perObject(television.readMultiplex);
const readService = perObject(television.readService);
const readOccasion = perObject(television.readOccasion);
const readStream = perObject(read.readStream);
const readTraffic = perObject(read.readTraffic);
const readVolume = perObject(read.readVolume);
const readRecording = perObject(read.readRecording);

/** Never fails: the first of two items with one name counts, and a name that leads nowhere is left unresolved. */
export function assemble(items: readonly Item[]): Site {
  return assembler()(items);
}

/** The same for one site that is edited: each part stays the same object as long as its items stay. */
export function assembler(): (items: readonly Item[]) => Site {
  const keep = Object.fromEntries(SECTION_NAMES.map((section) => [section, lastList<Item>()]));
  const keepFaulty = lastList<Item>();
  const settings = lastResult((of: readonly Item[]) => ({
    name: fixedText(of, 'name'),
    timezone: fixedText(of, 'timezone'),
    channelPlan: (fixedText(of, 'channel-plan') ?? 'region-1') as ChannelPlan,
  }));
  const vlans = lastResult((of: readonly Item[]) => named(of.map(readVlan)));
  const racks = lastResult((of: readonly Item[]) => named(of.map(readRack)));
  const devices = lastResult((of: readonly Item[]) => {
    const found = named(readDevices(of));
    return { ports: found.list.flatMap(({ ports }) => ports), ...found };
  });
  const cables = lastResult((of: readonly Item[]) => of.map(readCable));
  const multiplexes = lastResult((of: readonly Item[]) => named(of.map(readMultiplex)));
  const services = lastResult((of: readonly Item[]) => named(of.map(readService)));
  const occasions = lastResult((of: readonly Item[]) => named(of.map(readOccasion)));
  const streams = lastResult(
    (
      of: readonly Item[],
      multiplexByName: Site['multiplexByName'],
      serviceByName: Site['serviceByName'],
      channelPlan: ChannelPlan,
    ) => {
      const found = named(of.map(readStream));
      const facts = { multiplexByName, serviceByName, channelPlan };
      return { ...found, ...resolveMedia(found.byName, (stream) => broadcastRate(facts, stream)) };
    },
  );
  const traffic = lastResult((of: readonly Item[]) => named(of.map(readTraffic)));
  const volumes = lastResult((of: readonly Item[]) => named(of.map(readVolume)));
  const recordings = lastResult((of: readonly Item[]) => named(of.map(readRecording)));
  const policies = lastResult(policiesOf);
  const lint = lastResult(lintOf);

  return (items) => {
    const sections = grouped(items);
    for (const section of SECTION_NAMES) sections[section] = keep[section]?.(sections[section]) ?? sections[section];
    const fixed = settings(sections.site);
    const air = { multiplexes: multiplexes(sections.multiplexes), services: services(sections.services) };
    const declared = {
      vlans: vlans(sections.vlans),
      racks: racks(sections.racks),
      devices: devices(sections.devices),
      occasions: occasions(sections.occasions),
      streams: streams(sections.streams, air.multiplexes.byName, air.services.byName, fixed.channelPlan),
      traffic: traffic(sections.traffic),
      volumes: volumes(sections.volumes),
      recordings: recordings(sections.recordings),
      ...air,
    };
    return {
      items,
      sections,
      faulty: keepFaulty(items.filter(({ faulty }) => faulty)),
      vlans: declared.vlans.list,
      racks: declared.racks.list,
      devices: declared.devices.list,
      ports: declared.devices.ports,
      cables: cables(sections.cables),
      multiplexes: declared.multiplexes.list,
      services: declared.services.list,
      occasions: declared.occasions.list,
      streams: declared.streams.list,
      traffic: declared.traffic.list,
      volumes: declared.volumes.list,
      recordings: declared.recordings.list,
      policies: policies(sections.policies),
      lint: lint(sections.lint),
      vlanByName: declared.vlans.byName,
      rackByName: declared.racks.byName,
      deviceByName: declared.devices.byName,
      multiplexByName: declared.multiplexes.byName,
      serviceByName: declared.services.byName,
      occasionByName: declared.occasions.byName,
      streamByName: declared.streams.byName,
      trafficByName: declared.traffic.byName,
      volumeByName: declared.volumes.byName,
      recordingByName: declared.recordings.byName,
      media: declared.streams.media,
      carriedInCircle: declared.streams.carriedInCircle,
      ...fixed,
    };
  };
}

function grouped(items: readonly Item[]): Record<SectionName, readonly Item[]> {
  const bySection: Record<SectionName, Item[]> = {
    site: [],
    vlans: [],
    racks: [],
    devices: [],
    cables: [],
    multiplexes: [],
    services: [],
    occasions: [],
    streams: [],
    traffic: [],
    volumes: [],
    recordings: [],
    policies: [],
    lint: [],
  };
  for (const item of items) bySection[item.section].push(item);
  return bySection;
}

interface Named<T> {
  readonly list: readonly T[];
  readonly byName: ReadonlyMap<string, T>;
}

/** The first of two with the same name counts. */
function named<T extends { readonly name: string }>(all: readonly T[]): Named<T> {
  const byName = new Map<string, T>();
  for (const thing of all) if (!byName.has(thing.name)) byName.set(thing.name, thing);
  return { list: byName.size === all.length ? all : [...byName.values()], byName };
}

/** Devices whose ports would be too many for one site are read without any. */
function readDevices(items: readonly Item[]): Device[] {
  let left = MOST_PORTS;
  return items.map((item) => {
    left -= portCount(item);
    return left >= 0 ? readDevice(item) : readDeviceWithoutPorts(item);
  });
}

function fixedText(items: readonly Item[], key: string): string | undefined {
  const data = items.find((item) => item.name === key)?.data;
  return typeof data === 'string' || typeof data === 'number' ? String(data) : undefined;
}

const UNSET: Threshold = { warn: undefined, limit: undefined };

function policiesOf(items: readonly Item[]): Policies {
  const threshold = (key: string): Threshold => {
    const item = items.find((candidate) => candidate.name === key);
    return item === undefined ? UNSET : read.readThreshold(item);
  };
  const linkLoad = threshold('link-load');
  const volumeFill = threshold('volume-fill');
  const airtime = threshold('airtime');
  return {
    linkLoad: { warn: linkLoad.warn ?? LINK_WARN, limit: linkLoad.limit ?? LINK_LIMIT },
    airtime: { warn: airtime.warn ?? AIR_WARN, limit: airtime.limit ?? AIR_LIMIT },
    volumeFill: { warn: volumeFill.warn, limit: volumeFill.limit ?? VOLUME_LIMIT },
    retention: items.filter((item) => item.name === 'retention').flatMap(read.readRetention),
    runtime: read.readRuntime(items.find((item) => item.name === 'runtime')),
    aerialSystem: television.readAerialPolicy(items.find((item) => item.name === 'aerial-system')),
  };
}

function lintOf(items: readonly Item[]): Lint {
  return {
    // The first of two severities for one rule counts, as with two items of one name.
    severities: new Map(
      items
        .filter((item) => item.name === 'rules')
        .flatMap(read.readSeverities)
        .reverse(),
    ),
    acceptances: items.filter((item) => item.name === 'accept').flatMap(read.readAcceptances),
  };
}
