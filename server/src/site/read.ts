/** Reads items into facts. What an item lacks or gets wrong is `undefined` here; rules report it. */

import { parseAddress, parseRange, parseSubnet, type ParsedSubnet } from '../standards/ipv4.ts';
import { formatMac } from '../standards/mac.ts';
import { moduleNamed } from '../standards/modules.ts';
import { DEFAULT_BASIC_RATE } from '../standards/wifi.ts';
import { type QuantityKind, quantity } from '../text/quantity.ts';
import type { Data, Route } from '../text/syntax.ts';
import { byNumber } from './by-number.ts';
import { type Partly, asDeclared, strings } from './declared-data.ts';
import type { Item } from './item.ts';
import type {
  Acceptance,
  Audio,
  Cable,
  CableEnd,
  Connector,
  Decodes,
  Device,
  HostRoute,
  MediaRate,
  Port,
  PortAddress,
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
import { socketsAmong } from './sockets.ts';
import type * as Written from './schema.generated/types.ts';
import {
  isAerialKind,
  readAerialPart,
  readBuses,
  readCoaxFacts,
  readCoaxInputs,
  readConnectors,
  readTuners,
} from './television/read.ts';

const ANYWHERE: ParsedSubnet = { network: 0, prefix: 0, hostBits: false };
/** More ports than that in one range is a slip of the pen. */
export const RANGE_PORTS = 1024;

function address(text: unknown): number | undefined {
  return typeof text === 'string' ? parseAddress(text) : undefined;
}

function amount(text: unknown, kind: QuantityKind): number | undefined {
  return quantity(text, kind);
}

export function readVlan(item: Item): Vlan {
  const data = asDeclared<Written.Vlan>(item.data);
  return {
    item,
    name: item.name,
    id: data.id,
    subnet: data.subnet === undefined ? undefined : parseSubnet(data.subnet),
    gateway: data.gateway,
    querier: data.querier,
    pool: data['dhcp-pool'] === undefined ? undefined : parseRange(data['dhcp-pool']),
    reaches: data.reaches === undefined ? undefined : strings(data.reaches),
    internet: data.internet !== false,
  };
}

const BRIDGING: readonly (string | undefined)[] = ['switch', 'access-point', 'media-converter'];

/** A device without its ports where `withPorts` is false. */
export function readDevice(item: Item, withPorts = true): Device {
  const data = asDeclared<Written.Device>(item.data);
  const sockets = socketsOf(data);
  const bridging = BRIDGING.includes(data.kind) || sockets.size > 0;
  const portByName = new Map<string, Port>();
  const ports: Port[] = [];
  const connectorByName = new Map<string, Connector>();
  const device: Device = {
    item,
    name: item.name,
    kind: data.kind,
    bridging,
    routing: data.kind === 'router' ? data.routing !== false : data.kind === 'switch' && data.routing === true,
    ports,
    portByName,
    snooping: data['igmp-snooping'] === true,
    unregistered: data['unregistered-multicast'] ?? 'flood',
    unregisteredDeclared: data['unregistered-multicast'] !== undefined,
    unasked: data['without-querier'],
    spanningTree: data['spanning-tree'] === true,
    spanningTreePriority: data['spanning-tree-priority'] ?? 32_768,
    multicastRouting: data['multicast-routing'] === true,
    poeBudget: amount(data['poe-budget'], 'power'),
    mac: data.mac === undefined ? undefined : formatMac(data.mac),
    address: bridging ? address(data.address) : undefined,
    reserved: bridging && data.reserved === true,
    addresses: data.ports === undefined && !bridging ? [] : ownAddresses(data.addresses, [], 0),
    routes: readRoutes(data.routes),
    building: data.building,
    line: { down: amount(data.down, 'bit-rate'), up: amount(data.up, 'bit-rate') },
    basicRate: amount(data['basic-rate'], 'bit-rate') ?? DEFAULT_BASIC_RATE,
    multicastToUnicast: data['multicast-to-unicast'] === true,
    sessions: typeof data.sessions === 'number' ? data.sessions : undefined,
    decoders: typeof data.decoders === 'number' ? data.decoders : undefined,
    decodes: readDecodes(data.decodes ?? {}),
    aerial: readAerialPart(data.kind, data),
    connectorByName,
    coaxInputs: readCoaxInputs(data),
    tuners: readTuners(data, portNames),
    buses: readBuses(data),
    host: data.host,
    bus: data.bus,
  };
  for (const connector of readConnectors(device, data)) connectorByName.set(connector.name, connector);
  for (const port of withPorts ? readPorts(device, data, sockets) : [])
    if (!portByName.has(port.name)) portByName.set(port.name, port);
  ports.push(...[...portByName.values()].sort(byNumber));
  return device;
}

function readPorts(device: Device, data: Partly<Written.Device>, sockets: ReadonlySet<string>): Port[] {
  if (data.ports === undefined) {
    // A tuner that is plugged into another device has no port of its own.
    if (device.kind === 'patch-panel' || isAerialKind(device.kind) || device.host !== undefined) return [];
    return [readPort({ device, name: 'eth', route: [], offset: 0, forwards: device.bridging }, data)];
  }
  return Object.entries(data.ports).flatMap(([key, port]) => {
    const written = writtenPort(port);
    const forwards = BRIDGING.includes(device.kind) ? !isRouted(data, written) : sockets.has(key);
    return portNames(key).map((name, offset) =>
      readPort({ device, name, route: ['ports', key], offset, forwards }, written),
    );
  });
}

/** Of a router with several ports, the keys of those that are switched with each other. */
function socketsOf({ kind, ports, address: own, addresses }: Partly<Written.Device>): ReadonlySet<string> {
  if (kind !== 'router' || ports === undefined) return new Set();
  const declared = Object.entries(ports).map(([key, port]) => [key, writtenPort(port), portNames(key).length] as const);
  return socketsAmong(declared, own !== undefined || addresses !== undefined);
}

/** A port of a switch that routes may be a leg of its own, as a router's are: with an address and no VLAN. */
function isRouted({ kind, routing }: Partly<Written.Device>, port: Partly<Written.Port>): boolean {
  const { address: own, vlan, trunk, native } = port;
  return kind === 'switch' && routing === true && own !== undefined && (vlan ?? trunk ?? native) === undefined;
}

function writtenPort(port: unknown): Partly<Written.Port> {
  return asDeclared<Written.Port>((port ?? {}) as Data);
}

/** The names that a key of `ports` declares: a range each of its numbers, anything else itself. */
export function portNames(key: string): string[] {
  const range = portRange(key);
  return range === undefined ? [key] : Array.from({ length: range.count }, (_, i) => String(range.first + i));
}

function portRange(key: string): { readonly first: number; readonly count: number } | undefined {
  const range = /^(\d{1,6})-(\d{1,6})$/.exec(key);
  if (range === null) return undefined;
  const first = Number(range[1]);
  const count = Number(range[2]) - first + 1;
  return { first, count: count < 1 || count > RANGE_PORTS ? 0 : count };
}

/** How many ports a device declares, counted without creating them. */
export function portCount({ data }: Item): number {
  const { ports } = asDeclared<Written.Device>(data);
  return Object.keys(ports ?? {}).reduce((sum, key) => sum + (portRange(key)?.count ?? 1), 0);
}

/** Which port is read; `offset` counts from the first of its range. */
type Which = Pick<Port, 'device' | 'name' | 'route' | 'forwards'> & { readonly offset: number };

function readPort({ device, name, route, forwards, offset }: Which, data: Partly<Written.Port>): Port {
  const power = data.poe;
  const draws = typeof power === 'object' && power !== null ? (power as { class?: number; power?: string }) : undefined;
  return {
    device,
    name,
    route,
    forwards,
    speed: slower(amount(data.speed, 'bit-rate'), moduleNamed(data.module ?? '')?.speed),
    medium: data.medium,
    module: data.module,
    vlan: data.vlan,
    trunk: data.trunk === undefined ? undefined : strings(data.trunk),
    native: data.native,
    // Ports of a group share one address, and so do the sockets of a router.
    addresses:
      offset === 0 || (data.lag === undefined && device.kind !== 'router')
        ? readAddresses(device, route, data, offset)
        : [],
    feeds: typeof power === 'string' ? power : undefined,
    draws: draws === undefined ? undefined : { class: draws.class, milliwatts: amount(draws.power, 'power') },
    mac: data.mac,
    reserved: data.reserved === true,
    interface: data.interface,
    lag: data.lag,
    lacp: data.lacp ?? 'active',
    routerPort: data['router-port'] === true,
    forwardReports: data['forward-reports'] === true,
  };
}

/** A module of a lower speed than its cage sets the speed. */
function slower(port: number | undefined, module: number | undefined): number | undefined {
  return port === undefined || module === undefined ? (port ?? module) : Math.min(port, module);
}

/** A range with an address gives its ports consecutive addresses. */
function readAddresses(device: Device, route: Route, data: Partly<Written.Port>, offset: number): PortAddress[] {
  const found: PortAddress[] = [];
  const own = address(data.address);
  const isManagement = device.bridging && route.length === 0;
  if (own !== undefined && !isManagement)
    found.push({ address: own + offset, vlan: undefined, route: [...route, 'address'] });
  if (!isManagement) found.push(...ownAddresses(data.addresses, route, offset));
  return found;
}

function ownAddresses(data: Partly<Written.Port>['addresses'], route: Route, offset: number): PortAddress[] {
  return Object.entries(data ?? {}).flatMap(([vlan, text]) => {
    const value = address(text);
    return value === undefined ? [] : [{ address: value + offset, vlan, route: [...route, 'addresses', vlan] }];
  });
}

function readRoutes(routes: Partly<Written.Route[]> | undefined): HostRoute[] {
  return (routes ?? []).flatMap((route, index) => {
    if (route === null || route.to === undefined || route.port === undefined) return [];
    const to = route.to === 'default' ? ANYWHERE : parseSubnet(route.to);
    if (to === undefined) return [];
    return [{ to, port: String(route.port), vlan: route.vlan, via: address(route.via), route: ['routes', index] }];
  });
}

export function readCable(item: Item): Cable {
  const data = asDeclared<Written.Cable>(item.data);
  return {
    item,
    name: `${data.from ?? '?'} – ${data.to ?? '?'}`,
    from: readEnd(data.from, ['from']),
    to: readEnd(data.to, ['to']),
    type: data.type,
    length: amount(data.length, 'length'),
    fibres: data.fibres,
    through: strings(data.through).flatMap((text, index) => readEnd(text, ['through', index]) ?? []),
    coax: readCoaxFacts(data),
  };
}

export function readEnd(text: unknown, route: Route): CableEnd | undefined {
  if (typeof text !== 'string') return undefined;
  const slash = text.indexOf('/');
  if (slash === -1) return { device: text, port: undefined, route };
  return { device: text.slice(0, slash), port: text.slice(slash + 1), route };
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
    packetSize: amount(data['packet-size'], 'size'),
    muxRate: amount(data['mux-rate'], 'bit-rate'),
    egress: data.egress === undefined ? undefined : String(data.egress),
  };
}

function readDecodes({ video, audio, picture }: Partly<Written.Decodes>): Decodes {
  const codecs = (list: unknown): string[] | undefined => (list === undefined ? undefined : strings(list));
  return { video: codecs(video), audio: codecs(audio), picture: readPicture(picture) };
}

function readPicture(text: unknown): { width: number; height: number } | undefined {
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
    keyframeInterval: amount(data['keyframe-interval'], 'duration'),
  };
}

function readAudio(data: Partly<Written.Audio>): Audio {
  return {
    codec: data.codec,
    rate: readRate(data.bitrate, data['peak-bitrate']),
    sampleRate: amount(data['sample-rate'], 'frequency'),
    channels: data.channels,
  };
}

function readRate(nominalText: unknown, peakText: unknown): MediaRate | undefined {
  const nominal = amount(nominalText, 'bit-rate');
  const peak = amount(peakText, 'bit-rate');
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
    rate: amount(data.rate, 'bit-rate'),
    back: amount(data.back, 'bit-rate'),
  };
}

export function readVolume(item: Item): Volume {
  const data = asDeclared<Written.Volume>(item.data);
  return {
    item,
    name: item.name,
    host: data.host,
    capacity: amount(data.capacity, 'size'),
    path: data.path ?? `/srv/${item.name}`,
    disks: data.disks,
    redundancy: data.redundancy ?? 'none',
    reserve: amount(data.reserve, 'percentage') ?? 0,
    sustainedWrite: amount(data['sustained-write'], 'byte-rate'),
  };
}

export function readRecording(item: Item): Recording {
  const data = asDeclared<Written.Recording>(item.data);
  return {
    item,
    name: item.name,
    stream: data.stream,
    volume: data.volume,
    segment: amount(data.segment, 'duration'),
    keep: amount(data.keep, 'duration'),
    file: data.file,
  };
}

export function readThreshold(item: Item): Threshold {
  const data = asDeclared<{ warn: string; limit: string }>(item.data);
  return { warn: amount(data.warn, 'percentage'), limit: amount(data.limit, 'percentage') };
}

export function readRetention(item: Item): Retention[] {
  if (!Array.isArray(item.data)) return [];
  return item.data.flatMap((element, index) => {
    const data = asDeclared<Written.Retention>(element);
    return {
      item,
      route: [index],
      recordings: strings(data.recordings),
      atLeast: amount(data['at-least'], 'duration'),
      atMost: amount(data['at-most'], 'duration'),
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
    return { item, route: [index], rule: data.rule, at: data.at, because: data.because };
  });
}
