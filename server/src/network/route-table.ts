/**
 * The routing table of a device as the Linux kernel keeps it, checked against that kernel in the lab (ip-route(8); RFC
 * 1122 §3.3.1.1, from memory).
 *
 * - The most specific route counts; of two for one destination the first; a declared route before the subnet of a port.
 * - A route by a port without a cable stays: packets sent by it are lost without an error.
 * - A gateway must be in the subnet of the port, or the route is refused.
 */

import { type Device, type HostRoute, type Port, isNamed } from '../site/model.ts';
import { type Subnet, contains, isMulticast } from '../standards/ipv4.ts';
import type { Interface } from './interface.ts';
import type { BroadcastDomain } from './vlan-membership.ts';

/** How a device sends to a destination. */
export interface RouteEntry {
  readonly to: Subnet;
  readonly port: Port;
  /** `undefined` where the port has no cable that carries the network: packets are lost. */
  readonly by: Interface | undefined;
  /** The next router; `undefined` where the destination is on the link. */
  readonly via: NextHop | undefined;
  /** The declared route; `undefined` where it follows from an address or the gateway of a VLAN. */
  readonly route: HostRoute | undefined;
}

export interface NextHop {
  readonly address: number | undefined;
  /** The interface with that address there. */
  readonly at: Interface | undefined;
}

/** Where something is sent: a host's interface, or a group. */
export interface RouteDestination {
  readonly address: number | undefined;
  /** The network that it is in; `undefined` for a group. */
  readonly domain: BroadcastDomain | undefined;
}

/** A declared route that the kernel refuses, or that has no effect. */
export type RefusedRoute =
  /** The port is not one of the device, or does not carry the VLAN; the gateway is in no subnet of the port. */
  | { readonly route: HostRoute; readonly why: 'no-port' | 'no-vlan' | 'off-link' }
  /** An earlier route has the same destination. */
  | { readonly route: HostRoute; readonly why: 'second'; readonly first: HostRoute };

/** The input for the table of a device. */
export interface RouteTableInput {
  readonly device: Device;
  /** Its interfaces that have a cable, in the order of the ports. */
  readonly own: readonly Interface[];
  /** The interface with an address in a network; a router there that declares no address may have it. */
  readonly holder: (domain: BroadcastDomain, address: number) => Interface | undefined;
  /** The gateway that an interface's VLAN names; `undefined` where it names none, or an unknown device. */
  readonly gatewayOf: (by: Interface) => NextHop | undefined;
  /** The subnet of the declared VLAN that an address is in. */
  readonly subnetOf: (address: number) => Subnet | undefined;
}

const EVERYWHERE: Subnet = { network: 0, prefix: 0 };
const ALL_GROUPS: Subnet = { network: 0xe000_0000, prefix: 4 };
/** The prefix of an address outside the subnet of its VLAN: undeclared, so the usual one. */
const USUAL_PREFIX = 24;

export class RouteTable {
  /** Whether the site declares a route for addresses of hosts. */
  readonly hasUnicastRoutes: boolean;
  /** The declared routes that Linux accepts, in the order of the site. */
  readonly declared: readonly RouteEntry[];
  readonly refused: readonly RefusedRoute[];
  /** The default route by the gateway of a VLAN, where the site declares none. */
  readonly usualDefault: RouteEntry | undefined;
  /** The most specific first. */
  private readonly ways: readonly RouteEntry[];
  private readonly own: readonly Interface[];

  constructor(source: RouteTableInput) {
    const { device, own } = source;
    this.own = own;
    const connected = connectedOf(source);
    const { ways, refused } = device.routes.length === 0 ? NONE_DECLARED : declaredWays(source, connected);
    this.declared = ways;
    this.refused = refused;
    this.hasUnicastRoutes = device.routes.some(({ to }) => !isMulticast(to.network));
    const hasDefault = device.routes.some(({ to }) => to.prefix === 0);
    this.usualDefault = hasDefault ? undefined : usualDefaultOf(source, onLink(connected, ways));
    const all = [...ways, ...connected];
    if (this.usualDefault !== undefined) all.push(this.usualDefault);
    // The routes of most hosts are in order already.
    const isOrdered = all.every(({ to }, index) => to.prefix >= (all[index + 1]?.to.prefix ?? 0));
    this.ways = isOrdered ? all : all.sort((a, b) => b.to.prefix - a.to.prefix);
  }

  /** `undefined` where no route matches: the kernel reports the network as unreachable. */
  towards({ address, domain }: RouteDestination): RouteEntry | undefined {
    const found = address === undefined ? this.ways.find(isDefault) : this.ways.find(({ to }) => contains(to, address));
    const near = domain === undefined ? undefined : this.sharing(domain, address);
    if (near !== undefined && (found === undefined || found.to.prefix < near.to.prefix)) return near;
    if (found !== undefined || address === undefined || !isMulticast(address)) return found;
    const [only, ...others] = this.own;
    // A host with one card needs no route: the files made for it set one.
    return only === undefined || others.length > 0 ? undefined : wayBy(only, ALL_GROUPS);
  }

  /** A host of the same network counts as reachable if its address is unknown or outside the subnet. */
  private sharing(domain: BroadcastDomain, address: number | undefined): RouteEntry | undefined {
    const by = this.own.find((own) => own.domain === domain);
    if (by === undefined) return undefined;
    const subnet = domain.vlan?.subnet;
    if (subnet !== undefined && address !== undefined && contains(subnet, address)) return undefined;
    return wayBy(by, subnet ?? { network: 0, prefix: USUAL_PREFIX });
  }
}

function isDefault({ to }: RouteEntry): boolean {
  return to.prefix === 0;
}

function wayBy(by: Interface, to: Subnet): RouteEntry {
  return { to, port: by.port, by, via: undefined, route: undefined };
}

/** The routes to the subnets of its ports. A port without a cable keeps its address, and so its route. */
function connectedOf({ device, own, subnetOf }: RouteTableInput): RouteEntry[] {
  const ways: RouteEntry[] = [];
  for (const by of own) {
    const way = connectedBy(by);
    if (way !== undefined) ways.push(way);
  }
  for (const port of device.ports) {
    if (port.forwards || port.addresses.length === 0 || own.some((by) => isNamed(by.port, port.name))) continue;
    for (const { address } of port.addresses)
      ways.push({ to: subnetOf(address) ?? around(address), port, by: undefined, via: undefined, route: undefined });
  }
  return ways;
}

function connectedBy(by: Interface): RouteEntry | undefined {
  const subnet = by.domain.vlan?.subnet;
  const { address } = by;
  if (subnet !== undefined && (address === undefined || contains(subnet, address))) return wayBy(by, subnet);
  return address === undefined ? undefined : wayBy(by, around(address));
}

function around(address: number): Subnet {
  return { network: (address & 0xffff_ff00) >>> 0, prefix: USUAL_PREFIX };
}

/** The routes by which a gateway can be reached: not those of subnets that a declared route replaces. */
function onLink(connected: readonly RouteEntry[], ways: readonly RouteEntry[]): readonly RouteEntry[] {
  if (ways.length === 0) return connected;
  const isReplaced = ({ to }: RouteEntry): boolean =>
    ways.some((way) => way.to.network === to.network && way.to.prefix === to.prefix);
  // A rule of its own reports a default route without a gateway.
  const set = ways.filter(({ to, via }) => via === undefined && to.prefix > 0);
  return [...connected.filter((way) => !isReplaced(way)), ...set];
}

interface Declared {
  readonly ways: readonly RouteEntry[];
  readonly refused: readonly RefusedRoute[];
}

const NONE_DECLARED: Declared = { ways: [], refused: [] };

function declaredWays(source: RouteTableInput, connected: readonly RouteEntry[]): Declared {
  const ways: RouteEntry[] = [];
  const refused: RefusedRoute[] = [];
  for (const route of source.device.routes) {
    const first = ways.find(({ to }) => to.network === route.to.network && to.prefix === route.to.prefix)?.route;
    const way = wayOf(source, { connected, near: onLink(connected, ways) }, route);
    if (typeof way === 'string') refused.push({ route, why: way });
    else if (first === undefined) ways.push(way);
    else refused.push({ route, why: 'second', first });
  }
  return { ways, refused };
}

function wayOf(
  { device, own, holder, gatewayOf }: RouteTableInput,
  { connected, near }: { readonly connected: readonly RouteEntry[]; readonly near: readonly RouteEntry[] },
  route: HostRoute,
): RouteEntry | 'no-port' | 'no-vlan' | 'off-link' {
  const { to, vlan, via: address } = route;
  const named = device.portByName.get(route.port);
  if (named === undefined) return 'no-port';
  const port = sendingFor(named, own);
  const atPort = own.filter((by) => by.port === port);
  const usable = vlan === undefined ? atPort : atPort.filter(({ domain }) => domain.vlan?.name === vlan);
  if (atPort.length > 0 && usable.length === 0) return 'no-vlan';
  const way = { to, port, route };
  if (address !== undefined) {
    const link = near.find(
      (way) => way.port === port && (way.by === undefined || usable.includes(way.by)) && contains(way.to, address),
    );
    // An interface without an address and a subnet may reach any gateway.
    const by = link === undefined ? usable.find((own) => !connected.some((other) => other.by === own)) : link.by;
    if (link === undefined && by === undefined) return 'off-link';
    const at = by && holder(by.domain, address);
    // To Linux, a route by an address of the device itself is on the link.
    return { by, via: at?.device === device ? undefined : { address, at }, ...way };
  }
  const by = usable[0];
  const gateway = by === undefined || to.prefix > 0 ? undefined : gatewayOf(by);
  return { by, via: gateway, ...way };
}

/**
 * The port that sends in place of another: for switched sockets the one inside their device, for aggregated ports the
 * one of the first cable.
 */
function sendingFor(port: Port, own: readonly Interface[]): Port {
  const ports = own.map((by) => by.port);
  const found = port.forwards
    ? ports.find((by) => by.device.portByName.get(by.name) !== by)
    : ports.find((by) => isNamed(by, port.name));
  return found ?? port;
}

/** The default route by the first interface whose VLAN has a gateway, as on a host that is given one gateway. */
function usualDefaultOf({ own, gatewayOf }: RouteTableInput, near: readonly RouteEntry[]): RouteEntry | undefined {
  for (const by of own) {
    const via = gatewayOf(by);
    const address = via?.address;
    const { subnet } = by.domain.vlan ?? {};
    // Where the host's own address is outside the subnet, only that is reported.
    const isOutside = by.address !== undefined && subnet !== undefined && !contains(subnet, by.address);
    const isUnknown = address === undefined || subnet === undefined || isOutside;
    const isNear = isUnknown || near.some((way) => way.by === by && contains(way.to, address));
    if (via !== undefined && !isNear) return undefined;
    if (via !== undefined) return { ...wayBy(by, EVERYWHERE), via };
  }
  return undefined;
}
