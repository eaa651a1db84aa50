/**
 * A host's network as its operating system configures it: interfaces by name, addresses with prefixes, routes.
 *
 * What is refused about an interface, an address and a route is decided together, so it is one file.
 */

import type { Interface } from '../../network/interface.ts';
import type { Plan } from '../../plan.ts';
import { placeOf } from '../../site/item.ts';
import { linkEnd } from '../../network/link.ts';
import {
  type Device,
  type HostRoute,
  type Port,
  type PortAddress,
  type Vlan,
  addressesAt,
  isNamed,
  portName,
} from '../../site/model.ts';
import { type Subnet, contains, formatAddress, formatSubnet, isMulticast } from '../../standards/ipv4.ts';
import type { KeyPath } from '../../text/syntax.ts';
import { visible } from '../../text/visible.ts';
import { list, asName } from '../../text/words.ts';
import type { Refusal } from '../output.ts';
import { gatewayAddress } from './gateways.ts';

export interface HostInterface {
  readonly name: string;
  readonly port: Port;
  /** The VLAN of its frames, where it is known. */
  readonly vlan: Vlan | undefined;
  /** The tag of a VLAN interface, and the interface that carries the tagged frames. */
  readonly tag: { readonly id: number; readonly of: string } | undefined;
  readonly addresses: readonly HostAddress[];
  /** The cards of a bonding interface; empty for any other. */
  readonly cards: readonly Card[];
}

export interface Card {
  readonly name: string;
  readonly port: Port;
}

interface HostAddress {
  readonly address: number;
  readonly prefix: number;
  /** Metric of the route to its subnet, where an earlier card has one too: the lower is preferred. */
  readonly metric?: number;
  /** Whether the prefix is assumed, as no VLAN has a subnet with the address. */
  readonly isUsual?: boolean;
}

/** The prefix of a home network without VLANs; common practice. */
const USUAL_PREFIX = 24;

export interface NetworkRoute {
  readonly to: Subnet;
  readonly by: HostInterface;
  readonly via: number | undefined;
}

export interface HostNetwork {
  readonly device: Device;
  /** In the order of the ports, each followed by its VLAN interfaces in the order of their ids. */
  readonly interfaces: readonly HostInterface[];
  readonly routes: readonly NetworkRoute[];
  readonly refused: readonly Refusal[];
  /** Assumptions where the site declares nothing. */
  readonly notes: readonly string[];
}

export function hostNetwork(plan: Plan, device: Device): HostNetwork {
  const refused: Refusal[] = [];
  const refuse = (rule: string, keyPath: KeyPath, message: string): void =>
    void refused.push({ rule, at: placeOf(device.item, keyPath), message });
  const interfaces = ranked(interfacesOf(plan, device, refuse));
  const routes = device.routes.flatMap((route) => routeOf(plan, device, route, interfaces, refuse) ?? []);
  if (!device.routes.some(({ to }) => to.prefix === 0)) routes.push(...usualDefault(plan, device, interfaces));
  routes.push(...onlyMulticastRoute(plan, device, interfaces));
  return { device, interfaces, routes, refused, notes: prefixNotes(interfaces) };
}

/** Sets metrics so that the first of two cards in one network sends, whichever is up first. */
function ranked(interfaces: readonly HostInterface[]): HostInterface[] {
  const cards = new Map<string, string[]>();
  return interfaces.map((own) => {
    const addresses = own.addresses.map((address) => {
      const subnet = `${address.address - (address.address % 2 ** (32 - address.prefix))}/${address.prefix}`;
      const before = cards.get(subnet) ?? [];
      if (!before.includes(own.name)) cards.set(subnet, [...before, own.name]);
      const rank = (cards.get(subnet) ?? []).indexOf(own.name);
      return rank === 0 ? address : { ...address, metric: 100 * rank };
    });
    return { ...own, addresses };
  });
}

function prefixNotes(interfaces: readonly HostInterface[]): string[] {
  const usual = interfaces.flatMap(({ addresses }) => addresses.filter(({ isUsual }) => isUsual === true));
  if (usual.length === 0) return [];
  const all = list(usual.map(({ address }) => formatAddress(address)));
  return [
    `${all}: no VLAN has a subnet that holds ${usual.length === 1 ? 'it' : 'them'}, so the prefix is assumed to be ` +
      `/${USUAL_PREFIX}. Where it is another, give the VLAN its subnet.`,
  ];
}

type Refuse = (rule: string, keyPath: KeyPath, message: string) => void;

function interfacesOf(plan: Plan, device: Device, refuse: Refuse): HostInterface[] {
  const taken = new Map<string, string>();
  const take = (port: Port, name: string, key: string): boolean => {
    const why = isInterfaceName(name)
      ? nameTaken(taken, name)
      : 'Linux has interface names of 1 to 15 characters of ASCII, without space, / : or %';
    if (why === undefined) taken.set(name, portName(port));
    else {
      refuse(
        key === 'interface' && port.interface === undefined ? 'not-made' : 'interface-name',
        [...port.keyPath, key],
        `${visible(portName(port))} cannot be set up as ${visible(name)}: ${why}. Say its name in \`${key}\`.`,
      );
    }
    return why === undefined;
  };
  return device.ports.flatMap((port): HostInterface[] => {
    const bonded = port.lag === undefined ? [] : device.ports.filter(({ lag }) => lag === port.lag);
    if (bonded.length > 0 && bonded[0] !== port) return [];
    const cards = bonded.flatMap((card): Card[] => {
      const name = interfaceName(card);
      return take(card, name, 'interface') ? [{ name, port: card }] : [];
    });
    const name = port.lag ?? interfaceName(port);
    if (!take(port, name, port.lag === undefined ? 'interface' : 'lag')) return [];
    const [own, ...legs] = atPort(plan, standingFor(plan, bonded) ?? port, name, taken, refuse);
    return own === undefined ? legs : [{ ...own, cards }, ...legs];
  });
}

/** The bonded port by which the plan sends: that of the first cable. */
function standingFor({ network }: Plan, bonded: readonly Port[]): Port | undefined {
  return bonded.find((port) => {
    const link = network.topology.linkAt(port);
    return link !== undefined && linkEnd(link, port) === port;
  });
}

function atPort(plan: Plan, port: Port, name: string, taken: Map<string, string>, refuse: Refuse): HostInterface[] {
  const { topology } = plan.network;
  const own = topology.vlanMembershipOf(port);
  const vlan = (own.untagged ?? topology.linkAt(port)?.untagged)?.vlan;
  const tagged = own.tagged
    .flatMap(({ vlan: each }) => each ?? [])
    .sort((a, b) => (a.id ?? 0) - (b.id ?? 0) || (a.name < b.name ? -1 : 1));
  const of = new Map<Vlan | undefined, PortAddress[]>();
  for (const address of addressesAt(port)) {
    const target = homeOf(address, vlan, tagged);
    of.set(target, [...(of.get(target) ?? []), address]);
  }
  const legs = tagged.flatMap((leg): HostInterface[] => {
    if (leg.id === undefined) {
      refuse(
        'not-made',
        [...port.keyPath, 'trunk'],
        `${asName(leg.name)} has no id, so that ${portName(port)} cannot carry it with a tag. Give the VLAN its id.`,
      );
      return [];
    }
    const legName = `${name}.${leg.id}`;
    const why = isInterfaceName(legName)
      ? nameTaken(taken, legName)
      : `that is ${legName.length} characters, and Linux takes 15 at most`;
    if (why !== undefined) {
      refuse(
        port.interface === undefined ? 'not-made' : 'interface-name',
        [...port.keyPath, 'trunk'],
        `${asName(leg.name)} at ${portName(port)} would be the interface ${visible(legName)}: ${why}. Give the port another ` +
          '`interface`.',
      );
      return [];
    }
    taken.set(legName, portName(port));
    const addresses = (of.get(leg) ?? []).flatMap((address) => withPrefix(plan, port, address, leg, refuse));
    return [{ name: legName, port, vlan: leg, tag: { id: leg.id, of: name }, addresses, cards: [] }];
  });
  const addresses = [...of]
    .flatMap(([target, list]) => (target !== undefined && tagged.includes(target) ? [] : list))
    .flatMap((address) => withPrefix(plan, port, address, vlan, refuse));
  return [{ name, port, vlan, tag: undefined, addresses, cards: [] }, ...legs];
}

/** The tagged VLAN of an address; `undefined` where it belongs to the port's own interface. */
function homeOf(
  { address, vlan: name }: PortAddress,
  untagged: Vlan | undefined,
  tagged: readonly Vlan[],
): Vlan | undefined {
  if (name !== undefined) return tagged.find((leg) => leg.name === name);
  const holds = ({ subnet }: Vlan): boolean => subnet !== undefined && contains(subnet, address);
  return untagged !== undefined && holds(untagged) ? undefined : tagged.find(holds);
}

function withPrefix(
  plan: Plan,
  port: Port,
  { address, vlan: name, keyPath }: PortAddress,
  vlan: Vlan | undefined,
  refuse: Refuse,
): HostAddress[] {
  const said = formatAddress(address);
  if (name !== undefined && vlan !== undefined && vlan.name !== name) {
    refuse(
      'address-not-carried',
      keyPath,
      `${portName(port)} does not carry ${asName(name)}, so that ${said} cannot be set there. Add the VLAN to its trunk, or ` +
        'take the address out.',
    );
    return [];
  }
  const home =
    vlan ??
    (name === undefined
      ? plan.site.vlans.find(({ subnet }) => subnet !== undefined && contains(subnet, address))
      : plan.site.vlanByName.get(name));
  if (home?.subnet === undefined) return [{ address, prefix: USUAL_PREFIX, isUsual: true }];
  if (!contains(home.subnet, address)) {
    refuse(
      'address-outside-subnet',
      keyPath,
      `${said} is outside ${asName(home.name)}, ${formatSubnet(home.subnet)}, so that ${portName(port)} would reach nobody. ` +
        'Take an address inside.',
    );
    return [];
  }
  return [{ address, prefix: home.subnet.prefix }];
}

function routeOf(
  plan: Plan,
  device: Device,
  route: HostRoute,
  interfaces: readonly HostInterface[],
  refuse: Refuse,
): NetworkRoute | undefined {
  const { to } = route;
  const own = interfaces.filter(
    ({ port, vlan }) => isNamed(port, route.port) && (route.vlan === undefined || vlan?.name === route.vlan),
  );
  const first = planned(plan, device, route.port, own);
  if (first === undefined) {
    // A port that cannot be set up was refused before.
    if (device.portByName.has(route.port) && route.vlan !== undefined)
      refuse(
        'route-refused',
        [...route.keyPath, 'vlan'],
        `${device.name}/${route.port} does not carry ${visible(route.vlan)}, so that there is no route by it. Name a ` +
          'VLAN of the port.',
      );
    else if (!device.portByName.has(route.port))
      refuse(
        'no-such-port',
        [...route.keyPath, 'port'],
        `${asName(device.name)} has no port ${visible(route.port)}, so that there is no route by it. Name one of its ports.`,
      );
    return undefined;
  }
  const refused = plan.network.interfaces.table(device).refused.find((one) => one.route === route);
  if (refused?.why === 'second') {
    refuse(
      'route-refused',
      [...route.keyPath, 'to'],
      `${asName(device.name)} has a route for ${destination(to)} already, and Linux takes one alone. Take one of them out.`,
    );
    return undefined;
  }
  const { via } = route;
  if (refused?.why === 'off-link' && via !== undefined) {
    refuse(
      'route-refused',
      [...route.keyPath, 'via'],
      `${formatAddress(via)} is in no subnet of ${device.name}/${route.port}, so that nothing can be handed to it ` +
        'there. Name a router on that link.',
    );
    return undefined;
  }
  if (via !== undefined) {
    const by = own.find(({ vlan }) => vlan?.subnet !== undefined && contains(vlan.subnet, via));
    return { to, by: by ?? first, via };
  }
  if (to.prefix > 0) return { to, by: first, via: undefined };
  const gateway = first.vlan === undefined ? undefined : gatewayAddress(plan, first.vlan, device);
  if (gateway !== undefined) return { to, by: first, via: gateway };
  refuse(
    ruleOfDefault(plan, device, route),
    route.keyPath,
    `The default route of ${asName(device.name)} names no router, and the VLAN of ${route.port} has no gateway with an ` +
      'address. Say the address of the router in `via`.',
  );
  return undefined;
}

/** The rule that reports a default route without a gateway: before the host is cabled it is no mistake. */
function ruleOfDefault({ network }: Plan, device: Device, route: HostRoute): string {
  const own = network.interfaces.of(device);
  if (own.length === 0) return 'not-made';
  return own.some(({ port }) => port.name === route.port) ? 'route-gateway' : 'route-without-carrier';
}

/** The interface of a port by which the plan sends; without a cable in the plan, the first one with an address. */
function planned(
  { network }: Plan,
  device: Device,
  port: string,
  own: readonly HostInterface[],
): HostInterface | undefined {
  const by = network.interfaces.of(device).find((candidate) => isNamed(candidate.port, port));
  const vlan = by === undefined ? undefined : by.domain.vlan;
  return (
    own.find((candidate) => vlan !== undefined && candidate.vlan === vlan) ??
    own.find(({ addresses }) => addresses.length > 0) ??
    own[0]
  );
}

/** The plan's default route by the gateway of a VLAN; a card without an address gets it by DHCP. */
function usualDefault(plan: Plan, device: Device, interfaces: readonly HostInterface[]): NetworkRoute[] {
  const planned = plan.network.interfaces.table(device).usualDefault?.by;
  const own = planned === undefined ? undefined : ofPlan(interfaces, planned);
  const isCabled = plan.network.interfaces.of(device).length > 0;
  for (const by of isCabled ? (own === undefined ? [] : [own]) : interfaces) {
    const via = by.vlan === undefined || by.addresses.length === 0 ? undefined : gatewayAddress(plan, by.vlan, device);
    if (via !== undefined) return [{ to: { network: 0, prefix: 0 }, by, via }];
  }
  return [];
}

/** A host with one card and no gateway has no route for multicast, unless one is set. */
function onlyMulticastRoute(
  { site, network }: Plan,
  device: Device,
  interfaces: readonly HostInterface[],
): NetworkRoute[] {
  const usesGroups = site.streams.some(
    ({ group, source, receivers }) =>
      group !== undefined && isMulticast(group) && (source === device.name || receivers.includes(device.name)),
  );
  const way = usesGroups ? network.interfaces.towardsGroup(device, ALL_GROUPS.network) : undefined;
  if (way?.by === undefined || way.route !== undefined || way.to.prefix !== ALL_GROUPS.prefix) return [];
  const by = ofPlan(interfaces, way.by);
  return by === undefined ? [] : [{ to: ALL_GROUPS, by, via: undefined }];
}

const ALL_GROUPS: Subnet = { network: 0xe000_0000, prefix: 4 };

/** The interface by which the plan sends to a group. */
export function interfaceTowardsGroup(
  { network }: Plan,
  { device, interfaces }: HostNetwork,
  group: number,
): HostInterface | undefined {
  const by = network.interfaces.towardsGroup(device, group)?.by;
  return by === undefined ? undefined : ofPlan(interfaces, by);
}

/** The host's interface for an interface of the plan. */
export function ofPlan(interfaces: readonly HostInterface[], { port, domain }: Interface): HostInterface | undefined {
  const own = interfaces.filter((candidate) => candidate.port === port);
  return own.find(({ vlan }) => vlan !== undefined && vlan === domain.vlan) ?? own[0];
}

export function interfaceName(port: Port): string {
  return port.interface ?? port.name;
}

/**
 * Linux: `dev_valid_name` in net/core/dev.c takes 1 to 15 bytes without white space, / and :, and neither . nor ..;
 * when an interface is created, % starts a pattern (from memory). Beyond ASCII a byte may count as white space.
 */
function isInterfaceName(name: string): boolean {
  return /^[!-~]{1,15}$/.test(name) && !/[/:%]/.test(name) && name !== '.' && name !== '..';
}

function nameTaken(taken: ReadonlyMap<string, string>, name: string): string | undefined {
  const by = taken.get(name);
  return by === undefined ? undefined : `${by} has that name already`;
}

/** `default`, or a subnet with its prefix. */
export function destination(to: Subnet): string {
  return to.prefix === 0 ? 'default' : formatSubnet(to);
}
