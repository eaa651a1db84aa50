/** Reads a device with its ports, addresses and routes. What it lacks or gets wrong is `undefined` here. */

import { type ParsedSubnet, parseSubnet } from '../standards/ipv4.ts';
import { formatMac } from '../standards/mac.ts';
import { moduleNamed } from '../standards/modules.ts';
import { NONE } from '../none.ts';
import { DEFAULT_BASIC_RATE } from '../standards/wifi.ts';
import { quantity } from '../text/quantity.ts';
import type { Data, KeyPath } from '../text/syntax.ts';
import { byNumber } from './by-number.ts';
import { type Partly, address, asDeclared, strings } from './declared-data.ts';
import type { Item } from './item.ts';
import type {
  Connector,
  Decodes,
  Device,
  HostRoute,
  Mounting,
  OwnPower,
  PanelGrid,
  Port,
  PortAddress,
  Ups,
} from './model.ts';
import { portNames } from './port-names.ts';
import { readPicture, unitCount } from './read.ts';
import type * as Written from './schema.generated/types.ts';
import { socketsAmong } from './sockets.ts';
import {
  isAerialKind,
  readAerialPart,
  readBuses,
  readCoaxInputs,
  readConnectors,
  readTuners,
} from './television/read.ts';

const ANYWHERE: ParsedSubnet = { network: 0, prefix: 0, hostBits: false };
// Most devices declare none of these, so they share the same empty values.
const NO_CONNECTORS: Device['connectorByName'] = new Map();
const NO_LINE: Device['line'] = { down: undefined, up: undefined };
const NOT_MOUNTED: Mounting = {
  rack: undefined,
  unit: undefined,
  units: 1,
  side: 'front',
  width: undefined,
  depth: undefined,
  weight: undefined,
};
const ONE_WAY: PanelGrid = { rows: undefined, order: 'by-row' };
const UNDECLARED: Decodes = { video: undefined, audio: undefined, picture: undefined };
// Kinds without a port for Ethernet, unless they declare some.
const PORTLESS: readonly (string | undefined)[] = ['patch-panel', 'ups', 'circuit'];
const BRIDGING: readonly (string | undefined)[] = ['switch', 'access-point', 'media-converter'];

/** A device without its ports where `withPorts` is false. */
export function readDevice(item: Item, withPorts = true): Device {
  const data = asDeclared<Written.Device>(item.data);
  const sockets = socketsOf(data);
  const bridging = BRIDGING.includes(data.kind) || sockets.size > 0;
  const portByName = new Map<string, Port>();
  const device: Device & { ports: readonly Port[]; connectorByName: ReadonlyMap<string, Connector> } = {
    item,
    name: item.name,
    kind: data.kind,
    bridging,
    routing: data.kind === 'router' ? data.routing !== false : data.kind === 'switch' && data.routing === true,
    ports: NONE,
    portByName,
    snooping: data['igmp-snooping'] === true,
    unregistered: data['unregistered-multicast'] ?? 'flood',
    unregisteredDeclared: data['unregistered-multicast'] !== undefined,
    unasked: data['without-querier'],
    groupTable: typeof data['group-table'] === 'number' ? data['group-table'] : undefined,
    spanningTree: data['spanning-tree'] === true,
    spanningTreePriority: data['spanning-tree-priority'] ?? 32_768,
    multicastRouting: data['multicast-routing'] === true,
    poeBudget: quantity(data['poe-budget'], 'power'),
    mac: data.mac === undefined ? undefined : formatMac(data.mac),
    address: bridging ? address(data.address) : undefined,
    reserved: bridging && data.reserved === true,
    addresses: data.ports === undefined && !bridging ? NONE : ownAddresses(data.addresses, [], 0),
    routes: readRoutes(data.routes),
    mounting: readMounting(data),
    grid: readGrid(data),
    ownPower: readOwnPower(data.power),
    ups: data.kind === 'ups' ? readUps(data) : undefined,
    building: data.building,
    line: readLine(data),
    basicRate: quantity(data['basic-rate'], 'bit-rate') ?? DEFAULT_BASIC_RATE,
    multicastToUnicast: data['multicast-to-unicast'] === true,
    sessions: typeof data.sessions === 'number' ? data.sessions : undefined,
    decoders: typeof data.decoders === 'number' ? data.decoders : undefined,
    decodes: data.decodes === undefined ? UNDECLARED : readDecodes(data.decodes),
    aerial: readAerialPart(data.kind, data),
    connectorByName: NO_CONNECTORS,
    coaxInputs: readCoaxInputs(data),
    tuners: readTuners(data, portNames),
    buses: readBuses(data),
    host: data.host,
    bus: data.bus,
  };
  const connectors = readConnectors(device, data);
  if (connectors.length > 0)
    device.connectorByName = new Map(connectors.map((connector) => [connector.name, connector]));
  for (const port of withPorts ? readPorts(device, data, sockets) : [])
    if (!portByName.has(port.name)) portByName.set(port.name, port);
  device.ports = [...portByName.values()].sort(byNumber);
  return device;
}

function readPorts(device: Device, data: Partly<Written.Device>, sockets: ReadonlySet<string>): Port[] {
  if (data.ports === undefined) {
    // A tuner that is plugged into another device has no port of its own.
    if (PORTLESS.includes(device.kind) || isAerialKind(device.kind) || device.host !== undefined) return [];
    return [readPort({ device, name: 'eth', keyPath: [], offset: 0, forwards: device.bridging }, data)];
  }
  return Object.entries(data.ports).flatMap(([key, port]) => {
    const written = writtenPort(port);
    const forwards = BRIDGING.includes(device.kind) ? !isRouted(data, written) : sockets.has(key);
    return portNames(key).map((name, offset) =>
      readPort({ device, name, keyPath: ['ports', key], offset, forwards }, written),
    );
  });
}

/** The keys of a router's ports that are switched with each other. */
function socketsOf({ kind, ports, address: own, addresses }: Partly<Written.Device>): ReadonlySet<string> {
  if (kind !== 'router' || ports === undefined) return new Set();
  const declared = Object.entries(ports).map(([key, port]) => [key, writtenPort(port), portNames(key).length] as const);
  return socketsAmong(declared, own !== undefined || addresses !== undefined);
}

/** A routing switch may have routed ports, as a router has: those with an address and no VLAN. */
function isRouted({ kind, routing }: Partly<Written.Device>, port: Partly<Written.Port>): boolean {
  const { address: own, vlan, trunk, native } = port;
  return kind === 'switch' && routing === true && own !== undefined && (vlan ?? trunk ?? native) === undefined;
}

function writtenPort(port: unknown): Partly<Written.Port> {
  return asDeclared<Written.Port>((port ?? {}) as Data);
}

/** The port to read; `offset` counts from the first of its range. */
type Which = Pick<Port, 'device' | 'name' | 'keyPath' | 'forwards'> & { readonly offset: number };

function readPort({ device, name, keyPath, forwards, offset }: Which, data: Partly<Written.Port>): Port {
  const power = data.poe;
  const draws = typeof power === 'object' && power !== null ? (power as { class?: number; power?: string }) : undefined;
  return {
    device,
    name,
    keyPath,
    forwards,
    speed: slower(quantity(data.speed, 'bit-rate'), moduleNamed(data.module ?? '')?.speed),
    medium: data.medium,
    module: data.module,
    vlan: data.vlan,
    trunk: data.trunk === undefined ? undefined : strings(data.trunk),
    native: data.native,
    // Ports of a group share one address, and so do the sockets of a router.
    addresses:
      offset === 0 || (data.lag === undefined && device.kind !== 'router')
        ? readAddresses(device, keyPath, data, offset)
        : NONE,
    pse: typeof power === 'string' ? power : undefined,
    pd: draws === undefined ? undefined : { class: draws.class, milliwatts: quantity(draws.power, 'power') },
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
function readAddresses(
  device: Device,
  keyPath: KeyPath,
  data: Partly<Written.Port>,
  offset: number,
): readonly PortAddress[] {
  const own = address(data.address);
  const isManagement = device.bridging && keyPath.length === 0;
  if (isManagement) return NONE;
  const inVlans = ownAddresses(data.addresses, keyPath, offset);
  if (own === undefined) return inVlans;
  return [{ address: own + offset, vlan: undefined, keyPath: keyPath.concat('address') }, ...inVlans];
}

function ownAddresses(
  data: Partly<Written.Port>['addresses'],
  keyPath: KeyPath,
  offset: number,
): readonly PortAddress[] {
  if (data === undefined) return NONE;
  return Object.entries(data).flatMap(([vlan, text]) => {
    const value = address(text);
    return value === undefined ? [] : [{ address: value + offset, vlan, keyPath: [...keyPath, 'addresses', vlan] }];
  });
}

function readRoutes(routes: Partly<Written.Route[]> | undefined): readonly HostRoute[] {
  if (routes === undefined) return NONE;
  return routes.flatMap((route, index) => {
    if (route === null || route.to === undefined || route.port === undefined) return [];
    const to = route.to === 'default' ? ANYWHERE : parseSubnet(route.to);
    if (to === undefined) return [];
    return [{ to, port: String(route.port), vlan: route.vlan, via: address(route.via), keyPath: ['routes', index] }];
  });
}

function readMounting(data: Partly<Written.Device>): Mounting {
  const { rack, unit, units = 1, side = 'front', width, depth, weight } = data;
  if ((rack ?? unit ?? width ?? depth ?? weight) === undefined) return NOT_MOUNTED;
  return {
    rack,
    unit: unitCount(unit),
    units: unitCount(units) ?? 1,
    side,
    width: quantity(width, 'length'),
    depth: quantity(depth, 'length'),
    weight: quantity(weight, 'mass'),
  };
}

function readGrid({ rows, order = 'by-row' }: Partly<Written.Device>): PanelGrid {
  return rows === undefined && order === 'by-row' ? ONE_WAY : { rows: unitCount(rows), order };
}

function readLine({ down, up }: Partly<Written.Device>): Device['line'] {
  if (down === undefined && up === undefined) return NO_LINE;
  return { down: quantity(down, 'bit-rate'), up: quantity(up, 'bit-rate') };
}

function readOwnPower(data: unknown): OwnPower | undefined {
  if (data === undefined || data === null) return undefined;
  const power = asDeclared<Written.OwnPower>(data as Data);
  const factor = power['power-factor'];
  return {
    from: typeof power.from === 'string' ? power.from : undefined,
    idle: quantity(power.idle, 'power'),
    most: quantity(power['at-most'], 'power'),
    powerFactor: typeof factor === 'number' && factor > 0 && factor <= 1 ? factor : undefined,
    poeEfficiency: share(power['poe-efficiency']),
  };
}

function readUps(data: Partly<Written.Device>): Ups {
  return {
    rated: quantity(data.rated, 'apparent-power'),
    ratedPower: quantity(data['rated-power'], 'power'),
    battery: quantity(data.battery, 'energy'),
    chemistry: data.chemistry === 'lithium' ? 'lithium' : 'lead-acid',
    efficiency: share(data.efficiency),
    depth: share(data['depth-of-discharge']),
    health: share(data.health),
  };
}

/** Ten-thousandths above 0 and up to the whole; a rule reports any other. */
function share(text: unknown): number | undefined {
  const value = quantity(text, 'percentage');
  return value === undefined || value === 0 || value > 10_000 ? undefined : value;
}

function readDecodes({ video, audio, picture }: Partly<Written.Decodes>): Decodes {
  const codecs = (list: unknown): readonly string[] | undefined => (list === undefined ? undefined : strings(list));
  return { video: codecs(video), audio: codecs(audio), picture: readPicture(picture) };
}
