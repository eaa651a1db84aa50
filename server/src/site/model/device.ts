/** Devices with their ports, and how they are named. */

import type { ParsedSubnet } from '../../standards/ipv4.ts';
import type { BatteryChemistry } from '../../standards/battery.ts';
import type { Medium } from '../../standards/modules.ts';
import type { KeyPath } from '../../text/syntax.ts';
import type { AerialKind, AerialPart, Bus, CoaxInput, TunerUnit } from '../television/facts.ts';
import type { Fact } from './fact.ts';
import type { Mounting } from './rack.ts';

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
  | 'ups'
  | 'circuit'
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
  /** Whether the site declares what it does with groups that nobody has joined. */
  readonly unregisteredDeclared: boolean;
  /** How a snooping switch forwards groups without a querier; `undefined`, where undeclared, counts as by reports. */
  readonly unasked: 'by-reports' | 'flood' | undefined;
  /** How many groups it can keep apart; `undefined` where that is undeclared. */
  readonly groupTable: number | undefined;
  readonly spanningTree: boolean;
  readonly spanningTreePriority: number;
  readonly multicastRouting: boolean;
  /** Watts × 1000 that the device can feed over all its ports. */
  readonly poeBudget: number | undefined;
  /** The device's own MAC address, in lower case with colons. */
  readonly mac: string | undefined;
  /** A switch's own address, for its management; a router's own on its sockets. */
  readonly address: number | undefined;
  /** A DHCP server keeps that address for its `mac`. */
  readonly reserved: boolean;
  /** The device's own addresses in VLANs, at none of its ports. */
  readonly addresses: readonly PortAddress[];
  readonly routes: readonly HostRoute[];
  readonly mounting: Mounting;
  /** Of a patch panel: how its ports are arranged. */
  readonly grid: PanelGrid;
  /** Where it is fed from and what it draws; `undefined` where the site declares neither. */
  readonly ownPower: OwnPower | undefined;
  readonly ups: Ups | undefined;
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

/** What a device declares of its own power, without what it feeds to others; `undefined` where undeclared. */
export interface OwnPower {
  /** The UPS or the circuit that its plug is in, by name. */
  readonly from: string | undefined;
  /** mW */
  readonly idle: number | undefined;
  readonly most: number | undefined;
  /** Watts over volt-amperes. */
  readonly powerFactor: number | undefined;
  /** What leaves by its ports over what its supply takes for it; ten-thousandths. */
  readonly poeEfficiency: number | undefined;
}

/** The figures of a UPS as declared; shares in ten-thousandths. */
export interface Ups {
  /** mVA */
  readonly rated: number | undefined;
  /** mW */
  readonly ratedPower: number | undefined;
  /** mWh, as new. */
  readonly battery: number | undefined;
  readonly chemistry: BatteryChemistry;
  readonly efficiency: number | undefined;
  readonly depth: number | undefined;
  readonly health: number | undefined;
}

/** What a screen can show; `undefined` where undeclared. */
export interface Decodes {
  readonly video: readonly string[] | undefined;
  readonly audio: readonly string[] | undefined;
  /** The largest picture, in pixels. */
  readonly picture: { readonly width: number; readonly height: number } | undefined;
}

/** The rows of a patch panel, and how it counts its ports. */
export interface PanelGrid {
  /** `undefined`: as many as it takes with 24 ports in a row. */
  readonly rows: number | undefined;
  readonly order: 'by-row' | 'by-column';
}

export interface HostRoute {
  readonly to: ParsedSubnet;
  readonly port: string;
  /** By name, where the port carries several. */
  readonly vlan: string | undefined;
  /** The address of the next router. */
  readonly via: number | undefined;
  readonly keyPath: KeyPath;
}

export interface Port {
  readonly device: Device;
  readonly name: string;
  /** Where it is declared in the device's item: `['ports', '1-8']`, or `[]` for a device of one port. */
  readonly keyPath: KeyPath;
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
  readonly pse: PoeType | undefined;
  /** What the device draws through it, where it is a powered device. */
  readonly pd: { readonly class: number | undefined; readonly milliwatts: number | undefined } | undefined;
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
  readonly keyPath: KeyPath;
}

export type PoeType = 'af' | 'at' | 'bt' | 'bt-type-4';

export interface PortAddress {
  readonly address: number;
  /** The VLAN it belongs to, where the port carries several. */
  readonly vlan: string | undefined;
  readonly keyPath: KeyPath;
}

/** Every address of a device, its own before those of its ports. */
export function ownAddresses({ address, addresses, ports }: Device): readonly PortAddress[] {
  const own = address === undefined ? [] : [{ address, vlan: undefined, keyPath: ['address'] }];
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

/** `core/16`; the way a port is named everywhere. */
export function portName(port: Port): string {
  return `${port.device.name}/${port.name}`;
}

/** `house-splitter/out-1`; the way a connector is named everywhere. */
export function connectorName({ device, name }: Connector): string {
  return `${device.name}/${name}`;
}
