/** Reads items into facts. What an item lacks or gets wrong is `undefined` here; rules report it. */

import { parseRange, parseSubnet } from '../standards/ipv4.ts';
import { quantity } from '../text/quantity.ts';
import type { KeyPath } from '../text/syntax.ts';
import { type Partly, address, asDeclared, strings } from './declared-data.ts';
import type { Item } from './item.ts';
import { MOST_UNITS } from './model/rack.ts';
import type {
  Acceptance,
  Audio,
  Cable,
  CableEnd,
  MediaRate,
  Rack,
  Recording,
  Retention,
  Severity,
  Stream,
  Threshold,
  Traffic,
  Video,
  Vlan,
  Volume,
} from './model.ts';
import type * as Written from './schema.generated/types.ts';
import { readCoaxFacts } from './television/read.ts';

export function readVlan(item: Item): Vlan {
  const data = asDeclared<Written.Vlan>(item.data);
  return {
    item,
    name: item.name,
    id: data.id,
    subnet: data.subnet === undefined ? undefined : parseSubnet(data.subnet),
    gateway: data.gateway,
    querier: data.querier,
    clock: data.clock,
    pool: data['dhcp-pool'] === undefined ? undefined : parseRange(data['dhcp-pool']),
    reaches: data.reaches === undefined ? undefined : strings(data.reaches),
    internet: data.internet !== false,
  };
}

export function readRack(item: Item): Rack {
  const data = asDeclared<Written.Rack>(item.data);
  return {
    item,
    name: item.name,
    units: unitCount(data.units),
    depth: quantity(data.depth, 'length'),
    numberedFrom: data['numbered-from'] === 'top' ? 'top' : 'bottom',
    bears: quantity(data.bears, 'mass'),
  };
}

/** A number of units that a rack can have. */
export function unitCount(value: unknown): number | undefined {
  return typeof value === 'number' && Number.isInteger(value) && value > 0 && value <= MOST_UNITS ? value : undefined;
}

export function readCable(item: Item): Cable {
  const data = asDeclared<Written.Cable>(item.data);
  return {
    item,
    name: `${data.from ?? '?'} – ${data.to ?? '?'}`,
    from: readEnd(data.from, ['from']),
    to: readEnd(data.to, ['to']),
    type: data.type,
    length: quantity(data.length, 'length'),
    fibres: data.fibres,
    through: strings(data.through).flatMap((text, index) => readEnd(text, ['through', index]) ?? []),
    duct: data.duct,
    label: data.label,
    coax: readCoaxFacts(data),
  };
}

export function readEnd(text: unknown, keyPath: KeyPath): CableEnd | undefined {
  if (typeof text !== 'string') return undefined;
  const slash = text.indexOf('/');
  if (slash === -1) return { device: text, port: undefined, keyPath };
  return { device: text.slice(0, slash), port: text.slice(slash + 1), keyPath };
}

export function readStream(item: Item): Stream {
  const data = asDeclared<Written.Stream>(item.data);
  return {
    item,
    name: item.name,
    source: data.source,
    carries: data.carries,
    service: data.service,
    multiplex: data.multiplex,
    transport: data.transport,
    port: typeof data.port === 'number' ? data.port : undefined,
    path: data.path,
    credentials: data.credentials,
    group: address(data.group),
    ttl: data.ttl ?? 1,
    video: data.video === undefined ? undefined : readVideo(data.video),
    audio: data.audio === undefined ? undefined : readAudio(data.audio),
    receivers: [...new Set(strings(data.receivers))],
    packetSize: quantity(data['packet-size'], 'size'),
    muxRate: quantity(data['mux-rate'], 'bit-rate'),
    egress: data.egress === undefined ? undefined : String(data.egress),
  };
}

/** `1920x1080`, in pixels. */
export function readPicture(text: unknown): { width: number; height: number } | undefined {
  const size = /^(\d+)x(\d+)$/.exec(typeof text === 'string' ? text : '');
  return size === null ? undefined : { width: Number(size[1]), height: Number(size[2]) };
}

function readVideo(data: Partly<Written.Video>): Video {
  const size = readPicture(data.size);
  return {
    codec: data.codec,
    width: size?.width,
    height: size?.height,
    frameRate: data['frame-rate'],
    rate: readRate(data.bitrate, data['peak-bitrate']),
    keyframeInterval: quantity(data['keyframe-interval'], 'duration'),
  };
}

function readAudio(data: Partly<Written.Audio>): Audio {
  return {
    codec: data.codec,
    rate: readRate(data.bitrate, data['peak-bitrate']),
    sampleRate: quantity(data['sample-rate'], 'frequency'),
    channels: data.channels,
  };
}

function readRate(nominalText: unknown, peakText: unknown): MediaRate | undefined {
  const nominal = quantity(nominalText, 'bit-rate');
  const peak = quantity(peakText, 'bit-rate');
  if (nominal === undefined) return peak === undefined ? undefined : { nominal: peak, peak, peakDeclared: true };
  return { nominal, peak: peak ?? nominal, peakDeclared: peak !== undefined };
}

export function readTraffic(item: Item): Traffic {
  const data = asDeclared<Written.Traffic>(item.data);
  return {
    item,
    name: item.name,
    from: data.from,
    to: data.to,
    rate: quantity(data.rate, 'bit-rate'),
    back: quantity(data.back, 'bit-rate'),
  };
}

export function readVolume(item: Item): Volume {
  const data = asDeclared<Written.Volume>(item.data);
  return {
    item,
    name: item.name,
    host: data.host,
    capacity: quantity(data.capacity, 'size'),
    path: data.path ?? `/srv/${item.name}`,
    disks: data.disks,
    redundancy: data.redundancy ?? 'none',
    reserve: quantity(data.reserve, 'percentage') ?? 0,
    sustainedWrite: quantity(data['sustained-write'], 'byte-rate'),
  };
}

export function readRecording(item: Item): Recording {
  const data = asDeclared<Written.Recording>(item.data);
  return {
    item,
    name: item.name,
    stream: data.stream,
    volume: data.volume,
    segment: quantity(data.segment, 'duration'),
    keep: quantity(data.keep, 'duration'),
    file: data.file,
  };
}

export function readThreshold(item: Item): Threshold {
  const data = asDeclared<{ warn: string; limit: string }>(item.data);
  return { warn: quantity(data.warn, 'percentage'), limit: quantity(data.limit, 'percentage') };
}

export function readRuntime(item: Item | undefined): { cameras: number | undefined } {
  const data = item === undefined ? undefined : asDeclared<{ cameras: string }>(item.data);
  return { cameras: quantity(data?.cameras, 'duration') };
}

export function readRetention(item: Item): Retention[] {
  if (!Array.isArray(item.data)) return [];
  return item.data.flatMap((element, index) => {
    const data = asDeclared<Written.Retention>(element);
    return {
      item,
      keyPath: [index],
      recordings: strings(data.recordings),
      atLeast: quantity(data['at-least'], 'duration'),
      atMost: quantity(data['at-most'], 'duration'),
    };
  });
}

export function readSeverities(item: Item): [string, Severity | 'off'][] {
  return Object.entries(asDeclared<Record<string, Severity | 'off'>>(item.data)).flatMap(([rule, severity]) =>
    severity === undefined || severity === null ? [] : [[rule, severity]],
  );
}

export function readAcceptances(item: Item): Acceptance[] {
  if (!Array.isArray(item.data)) return [];
  return item.data.flatMap((element, index) => {
    const data = asDeclared<Written.Acceptance>(element);
    if (data.rule === undefined || data.at === undefined || data.because === undefined) return [];
    return { item, keyPath: [index], rule: data.rule, at: data.at, because: data.because };
  });
}
