/** A resolved site, as computations and rules see it. Of the text it knows only the item behind each thing. */

import type { ParsedSubnet } from '../standards/ipv4.ts';
import type { Medium } from '../standards/modules.ts';
import type { Route } from '../text/syntax.ts';
import type { Item } from './item.ts';
import type { SectionName } from './shape.ts';
import type {
  AerialKind,
  AerialPart,
  AerialPolicy,
  Bus,
  CoaxFacts,
  CoaxInput,
  Multiplex,
  Occasion,
  Service,
  TunerUnit,
} from './television/facts.ts';
import type { ChannelPlan } from '../standards/television/channel-plan.ts';

/** What an item says; the same object as long as the item's text stays. */
interface Fact {
  readonly item: Item;
  readonly name: string;
}

export interface Vlan extends Fact {
  readonly id: number | undefined;
  readonly subnet: ParsedSubnet | undefined;
  readonly gateway: string | undefined;
  readonly querier: string | undefined;
  readonly pool: { readonly first: number; readonly last: number } | undefined;
  /** Names of the VLANs that its hosts may ask; all where it is not said. */
  readonly reaches: readonly string[] | undefined;
  /** Whether anything passes between it and the Internet. */
  readonly internet: boolean;
}

export type DeviceKind =
  | 'switch'
  | 'router'
  | 'access-point'
  | 'media-converter'
  | 'server'
  | 'camera'
  | 'display'
  | 'computer'
  | 'tuner'
  | 'patch-panel'
  | 'internet'
  | AerialKind;

export interface Device extends Fact {
  readonly kind: DeviceKind | undefined;
  /** Forwards Ethernet frames between ports: a switch, an access point, a media converter, a router with sockets. */
  readonly bridging: boolean;
  /** Forwards packets between the networks that it has an address in. */
  readonly routing: boolean;
  readonly ports: readonly Port[];
  readonly portByName: ReadonlyMap<string, Port>;
  readonly snooping: boolean;
  readonly unregistered: 'flood' | 'drop';
  /** Whether the site says what it does with groups that nobody has joined. */
  readonly unregisteredDeclared: boolean;
  /** By what a snooping switch sends groups where nobody asks for memberships; by reports where it is not said. */
  readonly unasked: 'by-reports' | 'flood' | undefined;
  readonly spanningTree: boolean;
  readonly spanningTreePriority: number;
  readonly multicastRouting: boolean;
  /** Watts × 1000 that the device can feed over all its ports. */
  readonly poeBudget: number | undefined;
  /** Of the device itself, in small digits with colons. */
  readonly mac: string | undefined;
  /** A switch's own address, for its management; a router's own on its sockets. */
  readonly address: number | undefined;
  /** A DHCP server keeps that address for its `mac`. */
  readonly reserved: boolean;
  /** The device's own in VLANs, at none of its ports. */
  readonly addresses: readonly PortAddress[];
  readonly routes: readonly HostRoute[];
  /** What shares one earth with it. */
  readonly building: string | undefined;
  /** Of the Internet: bit/s that the provider's line gives, towards the house and from it. */
  readonly line: { readonly down: number | undefined; readonly up: number | undefined };
  /** Of an access point: bit/s at which it sends groups into the air. */
  readonly basicRate: number;
  /** Of an access point: sends a group to each station that has joined it, on its own. */
  readonly multicastToUnicast: boolean;
  /** How many receivers may pull from it at a time. */
  readonly sessions: number | undefined;
  /** How many streams it shows at a time; `undefined` where it takes all that it receives. */
  readonly decoders: number | undefined;
  readonly decodes: Decodes;
  /** Of a part of an aerial system. */
  readonly aerial: AerialPart | undefined;
  /** For coax; a device may have them beside its ports. */
  readonly connectorByName: ReadonlyMap<string, Connector>;
  /** What it takes at a connector, by the connector's name. */
  readonly coaxInputs: ReadonlyMap<string, CoaxInput>;
  readonly tuners: readonly TunerUnit[];
  /** USB controllers. */
  readonly buses: readonly Bus[];
  /** What a tuner without a port of its own is plugged into. */
  readonly host: string | undefined;
  readonly bus: string | undefined;
}

/** What a screen can show; `undefined` where nothing is said of it. */
export interface Decodes {
  readonly video: readonly string[] | undefined;
  readonly audio: readonly string[] | undefined;
  /** The largest picture, in pixels. */
  readonly picture: { readonly width: number; readonly height: number } | undefined;
}

export interface HostRoute {
  readonly to: ParsedSubnet;
  readonly port: string;
  /** By name, where the port carries several. */
  readonly vlan: string | undefined;
  /** The address of the router that it is handed to. */
  readonly via: number | undefined;
  readonly route: Route;
}

export interface Port {
  readonly device: Device;
  readonly name: string;
  /** Where it is declared in the device's item: `['ports', '1-8']`, or `[]` for a device of one port. */
  readonly route: Route;
  /** Whether frames pass between it and the other such ports of its device. */
  readonly forwards: boolean;
  /** bit/s; no more than its module has. */
  readonly speed: number | undefined;
  readonly medium: Medium | undefined;
  /** By its kind of Ethernet. */
  readonly module: string | undefined;
  readonly vlan: string | undefined;
  readonly trunk: readonly string[] | undefined;
  readonly native: string | undefined;
  readonly addresses: readonly PortAddress[];
  /** What the port can feed, where it is power sourcing equipment. */
  readonly feeds: PoeType | undefined;
  /** What the device draws through it, where it is a powered device. */
  readonly draws: { readonly class: number | undefined; readonly milliwatts: number | undefined } | undefined;
  readonly mac: string | undefined;
  /** A DHCP server keeps its addresses for its `mac`. */
  readonly reserved: boolean;
  /** What the operating system calls it, where that is not `name`. */
  readonly interface: string | undefined;
  /** The link aggregation group that it belongs to. */
  readonly lag: string | undefined;
  readonly lacp: 'active' | 'passive' | 'off';
  readonly routerPort: boolean;
  readonly forwardReports: boolean;
}

/** A socket or plug for coax on a device. */
export interface Connector {
  readonly device: Device;
  readonly name: string;
  /** Where it is declared in the device's item; `[]` where its kind has it. */
  readonly route: Route;
}

export type PoeType = 'af' | 'at' | 'bt' | 'bt-type-4';

export interface PortAddress {
  readonly address: number;
  /** The VLAN it belongs to, where the port carries several. */
  readonly vlan: string | undefined;
  readonly route: Route;
}

/** An end of a cable as written. */
export interface CableEnd {
  readonly device: string;
  readonly port: string | undefined;
  readonly route: Route;
}

export interface Cable extends Fact {
  readonly from: CableEnd | undefined;
  readonly to: CableEnd | undefined;
  readonly type: string | undefined;
  /** Millimetres. */
  readonly length: number | undefined;
  /** Of a cable of glass. */
  readonly fibres: number | undefined;
  readonly through: readonly CableEnd[];
  readonly coax: CoaxFacts;
}

export type Transport = 'rtsp' | 'rtsp-udp' | 'rtp' | 'ts-udp' | 'ts-rtp';

/** Whether each receiver asks the source for the stream by RTSP, however it comes then. */
export function isRtsp(transport: string | undefined): boolean {
  return transport === 'rtsp' || transport === 'rtsp-udp';
}

/** bit/s; the peak is the nominal rate where none is declared. */
export interface MediaRate {
  readonly nominal: number;
  readonly peak: number;
  readonly peakDeclared: boolean;
}

export interface Video {
  readonly codec: string | undefined;
  readonly width: number | undefined;
  readonly height: number | undefined;
  readonly frameRate: number | undefined;
  readonly rate: MediaRate | undefined;
  /** Milliseconds. */
  readonly keyframeInterval: number | undefined;
}

export interface Audio {
  readonly codec: string | undefined;
  readonly rate: MediaRate | undefined;
  /** Samples per second. */
  readonly sampleRate: number | undefined;
  readonly channels: number | undefined;
}

export interface Stream extends Fact {
  readonly source: string | undefined;
  readonly carries: string | undefined;
  /** What of television it sends: a programme, or a whole multiplex. */
  readonly service: string | undefined;
  readonly multiplex: string | undefined;
  readonly transport: Transport | undefined;
  readonly port: number | undefined;
  /** What follows the port in an RTSP address. */
  readonly path: string | undefined;
  /** Names a file of user and password on the host that asks for the stream. */
  readonly credentials: string | undefined;
  readonly group: number | undefined;
  readonly ttl: number;
  /** As declared here; `Site.media` adds what is carried over from another stream. */
  readonly video: Video | undefined;
  readonly audio: Audio | undefined;
  readonly receivers: readonly string[];
  /** Bytes of media in a packet. */
  readonly packetSize: number | undefined;
  /** bit/s of the whole transport stream, padding included. */
  readonly muxRate: number | undefined;
  readonly egress: string | undefined;
}

/** What else two devices send each other; rates of the data in bit/s. */
export interface Traffic extends Fact {
  readonly from: string | undefined;
  readonly to: string | undefined;
  /** From `from` to `to`. */
  readonly rate: number | undefined;
  readonly back: number | undefined;
}

export interface Volume extends Fact {
  readonly host: string | undefined;
  /** Bytes of one disk where `disks` is declared, else of the whole. */
  readonly capacity: number | undefined;
  /** Where its host has it mounted: as said, else /srv and its name. */
  readonly path: string;
  readonly disks: number | undefined;
  readonly redundancy: 'none' | 'mirror' | 'raid5' | 'raid6' | 'raid10';
  /** Ten-thousandths. */
  readonly reserve: number;
  /** bytes/s */
  readonly sustainedWrite: number | undefined;
}

export interface Recording extends Fact {
  readonly stream: string | undefined;
  readonly volume: string | undefined;
  /** Milliseconds. */
  readonly segment: number | undefined;
  /** Milliseconds. */
  readonly keep: number | undefined;
  readonly file: string | undefined;
}

export interface Retention {
  readonly item: Item;
  readonly route: Route;
  readonly recordings: readonly string[];
  /** Milliseconds. */
  readonly atLeast: number | undefined;
  readonly atMost: number | undefined;
}

/** As declared; ten-thousandths of the whole. */
export interface Threshold {
  readonly warn: number | undefined;
  readonly limit: number | undefined;
}

/** What the site asks for, or what holds where it says nothing; thresholds in ten-thousandths of the whole. */
export interface Policies {
  readonly linkLoad: { readonly warn: number; readonly limit: number };
  readonly airtime: { readonly warn: number; readonly limit: number };
  readonly volumeFill: { readonly warn: number | undefined; readonly limit: number };
  readonly retention: readonly Retention[];
  readonly aerialSystem: AerialPolicy;
}

export type Severity = 'error' | 'warning' | 'information' | 'hint';

export interface Acceptance {
  readonly item: Item;
  readonly route: Route;
  readonly rule: string;
  readonly at: string;
  readonly because: string;
}

export interface Lint {
  readonly severities: ReadonlyMap<string, Severity | 'off'>;
  readonly acceptances: readonly Acceptance[];
}

/** What a stream consists of, including what it carries from another. */
export interface Media {
  readonly video: Video | undefined;
  readonly audio: Audio | undefined;
  /** Of a transport stream that comes from the air as it is: a programme with its tables, or a whole multiplex. */
  readonly broadcast: MediaRate | undefined;
}

export interface Site {
  readonly name: string | undefined;
  readonly timezone: string | undefined;
  readonly channelPlan: ChannelPlan;
  readonly items: readonly Item[];
  readonly sections: Readonly<Record<SectionName, readonly Item[]>>;
  /** Those with something that does not fit the schema, or cannot be read. */
  readonly faulty: readonly Item[];
  readonly vlans: readonly Vlan[];
  readonly devices: readonly Device[];
  readonly ports: readonly Port[];
  readonly cables: readonly Cable[];
  readonly multiplexes: readonly Multiplex[];
  readonly services: readonly Service[];
  readonly occasions: readonly Occasion[];
  readonly streams: readonly Stream[];
  readonly traffic: readonly Traffic[];
  readonly volumes: readonly Volume[];
  readonly recordings: readonly Recording[];
  readonly policies: Policies;
  readonly lint: Lint;
  readonly vlanByName: ReadonlyMap<string, Vlan>;
  readonly deviceByName: ReadonlyMap<string, Device>;
  readonly multiplexByName: ReadonlyMap<string, Multiplex>;
  readonly serviceByName: ReadonlyMap<string, Service>;
  readonly occasionByName: ReadonlyMap<string, Occasion>;
  readonly trafficByName: ReadonlyMap<string, Traffic>;
  readonly streamByName: ReadonlyMap<string, Stream>;
  readonly volumeByName: ReadonlyMap<string, Volume>;
  readonly recordingByName: ReadonlyMap<string, Recording>;
  /** What a stream consists of; follows `carries`. */
  readonly media: (stream: Stream) => Media;
  /** Streams that carry themselves, directly or through others. */
  readonly carriedInCircle: readonly Stream[];
}

/** The port that an end of a cable names; `undefined` if the site has no such port. */
export function portAt({ deviceByName }: Pick<Site, 'deviceByName'>, end: CableEnd | undefined): Port | undefined {
  if (end === undefined) return undefined;
  const device = deviceByName.get(end.device);
  if (device === undefined) return undefined;
  if (end.port !== undefined) return device.portByName.get(end.port);
  return device.ports.length === 1 ? device.ports[0] : undefined;
}

/** Every address of a device, its own before those of its ports. */
export function ownAddresses({ address, addresses, ports }: Device): readonly PortAddress[] {
  const own = address === undefined ? [] : [{ address, vlan: undefined, route: ['address'] }];
  return [...own, ...addresses, ...ports.flatMap((port) => port.addresses)];
}

/** The addresses at a port; the ports of a link aggregation group share theirs. */
export function addressesAt(port: Port): readonly PortAddress[] {
  if (port.lag === undefined) return port.addresses;
  return port.device.ports.filter(({ lag }) => lag === port.lag).flatMap(({ addresses }) => addresses);
}

/** Whether a name is that of a port, or of another of its link aggregation group. */
export function isNamed({ device, name, lag }: Port, given: string): boolean {
  return name === given || (lag !== undefined && device.portByName.get(given)?.lag === lag);
}

/** The coax connector that an end of a cable names; `undefined` if the site has none. */
export function connectorAt(
  { deviceByName }: Pick<Site, 'deviceByName'>,
  end: CableEnd | undefined,
): Connector | undefined {
  const device = end === undefined ? undefined : deviceByName.get(end.device);
  if (device === undefined || end === undefined) return undefined;
  if (end.port !== undefined) return device.connectorByName.get(end.port);
  const [only, ...others] = device.connectorByName.values();
  return device.ports.length === 0 && others.length === 0 ? only : undefined;
}

/** An end of a cable as it is written: `core/16`, or a device alone. */
export function endName({ device, port }: CableEnd): string {
  return port === undefined ? device : `${device}/${port}`;
}

/** `core/16`; the way a port is named everywhere. */
export function portName(port: Port): string {
  return `${port.device.name}/${port.name}`;
}

/** `house-splitter/out-1`; the way a connector is named everywhere. */
export function connectorName({ device, name }: Connector): string {
  return `${device.name}/${name}`;
}
