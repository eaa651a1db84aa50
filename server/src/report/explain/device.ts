/** A device at a glance: its ports with their loads, its power, its streams. */

import { canForward } from '../../network/can-forward.ts';
import { type Link, memberLinkAt, oppositePort } from '../../network/link.ts';
import { uplinksOf } from '../../network/uplinks.ts';
import type { Plan } from '../../plan.ts';
import { type Device, type Port, type PortAddress, ownAddresses, portName } from '../../site/model.ts';
import { formatAddress, formatSubnet, isMulticast } from '../../standards/ipv4.ts';
import { bitRate, count, few, list, percent, watts } from '../../text/words.ts';
import type { Explanation, ExplanationLine } from './explanation.ts';
import { directionExplained } from './link.ts';
import { inPortOrder } from './port-order.ts';
import { airExplained } from './air.ts';
import { amplifierExplained, connectorExplained } from './television.ts';
import { busesExplained, tunersExplained } from './tuners.ts';
import { supplyExplained } from './supply.ts';
import { uplinkExplained } from './uplink.ts';
import { drawExplained } from './power.ts';
import { deviceAnswer } from '../answer/device.ts';
import { portAnswer, portsAnswer } from '../answer/port.ts';

/** The device, and its power over Ethernet where it feeds others. */
export function deviceExplained(plan: Plan, device: Device): Explanation[] {
  const power = plan.poe.find((source) => source.device === device);
  const air = plan.air.filter((cell) => cell.device === device);
  return [
    summary(plan, device),
    ...(power === undefined || power.feeds.length === 0 ? [] : [drawExplained(power)]),
    ...supplyExplained(plan, device),
    ...air.map(airExplained),
    ...amplifierExplained(plan, device),
    ...tunersExplained(plan, device),
    ...busesExplained(plan, device),
    ...[...device.connectorByName.values()]
      .filter((connector) => plan.television.reception.pointsAt(connector).length > 0)
      .map((connector) => connectorExplained(plan, connector)),
    ...uplinksOf([device], plan.network).flatMap((uplink) => uplinkExplained(plan, uplink)),
  ];
}

function summary(plan: Plan, device: Device): Explanation {
  const { site, network } = plan;
  const lines: ExplanationLine[] = [];
  lines.push(...ownAddresses({ ...device, ports: [] }).map((own) => addressLine(device, own)));
  const cabled = cabledLines(plan, device.ports);
  lines.push(...cabled);
  const free = device.ports.length - cabled.length;
  const sentences: string[] = [];
  if (device.ports.length > 0)
    sentences.push(`${count(device.ports.length, 'port')}${free === 0 ? '' : `, ${free} without a cable`}.`);
  if (device.connectorByName.size > 0)
    sentences.push(
      `${count(device.connectorByName.size, 'coax connector')}: ${few([...device.connectorByName.keys()], 6)}.`,
    );
  if (device.kind === 'switch' || (device.kind === 'router' && device.bridging)) sentences.push(switchWords(device));
  if (device.bridging && device.routing) sentences.push(...routingWords(plan, device));
  sentences.push(...routeWords(plan, device));
  const sent = site.streams.filter(({ source }) => source === device.name).map(({ name }) => name);
  const received = network.deliveries
    .filter(({ reaches }) => reaches.includes(device.name))
    .map(({ stream }) => stream.name);
  if (device.building !== undefined) sentences.push(`It is in the building ${device.building}.`);
  if (device.decoders !== undefined) sentences.push(`It shows ${count(device.decoders, 'stream')} at a time.`);
  if (device.host !== undefined) sentences.push(`It is plugged into ${device.host}, which sends its streams.`);
  if (sent.length > 0) sentences.push(`It sends ${few(sent, 6)}.`);
  if (received.length > 0) sentences.push(`It receives ${few(received, 6)}.`);
  return {
    answer: deviceAnswer(plan, device),
    title: `${device.name}: ${device.kind?.replace('-', ' ') ?? 'device'}`,
    sentences,
    columns: lines.length === 0 ? [] : ['out at peak', 'in at peak'],
    lines,
  };
}

function addressLine({ routing }: Device, { address, vlan }: PortAddress): ExplanationLine {
  const what = routing ? 'on the ports that it switches' : 'for its management';
  return { label: 'address', cells: [formatAddress(address), ''], formula: vlan === undefined ? what : `in ${vlan}` };
}

/** The networks between which a device that also switches forwards packets. */
function routingWords({ network }: Plan, device: Device): string[] {
  const switched = device.ports.filter(({ forwards }) => forwards).length;
  const networks = network.interfaces.of(device).map(({ domain }) => domain.name);
  const between = networks.length > 1 ? [`It routes between ${list([...new Set(networks)])}.`] : [];
  return [`Frames pass between ${count(switched, 'port')} of it without being routed, within their VLAN.`, ...between];
}

function routeWords({ network, site }: Plan, device: Device): string[] {
  const { declared, usualDefault } = network.interfaces.table(device);
  const words = declared.map(({ to, port, by, via, route }) => {
    const vlan = route?.vlan === undefined ? '' : `, into ${route.vlan}`;
    const router = via?.address === undefined ? '' : `, by way of ${formatAddress(via.address)}`;
    const lost = by === undefined ? ', which has no cable: it is lost' : '';
    return `${to.prefix === 0 ? 'Everything else' : formatSubnet(to)} leaves by port ${port.name}${vlan}${router}${lost}.`;
  });
  if (usualDefault?.by !== undefined && device.ports.length > 1)
    words.push(
      `Everything else leaves by port ${usualDefault.port.name}, as ${usualDefault.by.domain.name} has a gateway.`,
    );
  const groups = site.streams.flatMap(({ group, source, receivers }) =>
    group !== undefined && isMulticast(group) && (source === device.name || receivers.includes(device.name))
      ? [group]
      : [],
  );
  const way = groups[0] === undefined ? undefined : network.interfaces.towardsGroup(device, groups[0]);
  // Cameras and screens handle this in their own systems.
  if (way !== undefined && way.route === undefined && way.to.prefix === 4 && canForward(device))
    words.push(
      `Without a gateway Linux has no route for multicast: set 224.0.0.0/4 by port ${way.port.name}, as ` +
        'what `make networkd` and `make iproute2` write does.',
    );
  return words;
}

/** Ports that one key declares: a line for each one with a cable. */
export function portRangeExplained(plan: Plan, device: Device, key: string, ports: readonly Port[]): Explanation {
  const lines = cabledLines(plan, ports);
  const [first] = ports;
  const sentences = [
    `${count(ports.length, 'port')}, ${ports.length - lines.length} without a cable.`,
    ...(first === undefined ? [] : portWords(first)),
  ];
  return {
    answer: portsAnswer(plan, device, ports),
    title: `${device.name}/${key}`,
    sentences,
    columns: ['out at peak', 'in at peak'],
    lines,
  };
}

function cabledLines(plan: Plan, ports: readonly Port[]): ExplanationLine[] {
  return inPortOrder(ports, (port) => port).flatMap((port) => {
    const link = plan.network.topology.linkAt(port);
    return link === undefined ? [] : [portLine(plan, port, link)];
  });
}

function switchWords({ snooping, unregistered, spanningTree }: Device): string {
  const multicast = snooping
    ? `IGMP snooping, groups that nobody joined are ${unregistered === 'drop' ? 'dropped' : 'flooded'}`
    : 'no IGMP snooping: it floods multicast';
  return `${multicast}; ${spanningTree ? 'spanning tree' : 'no spanning tree'}.`.replace(/^./, (first) =>
    first.toUpperCase(),
  );
}

function portLine({ network }: Plan, port: Port, link: Link): ExplanationLine {
  const other = oppositePort(link, port);
  const peak = (out: Port): string => {
    const rate = network.load(link, out).line.peak;
    if (link.blocked !== undefined && rate === 0) return 'blocked';
    return link.capacity === undefined || link.capacity === 0
      ? bitRate(rate)
      : `${bitRate(rate)}, ${percent(rate, link.capacity)}`;
  };
  return {
    label: port.name,
    cells: [peak(port), peak(other)],
    formula: [
      `to ${portName(farEnd(link, port))}`,
      link.capacity === undefined ? '' : bitRate(link.capacity),
      addressesOf(port),
    ]
      .filter((part) => part !== '')
      .join(', '),
  };
}

/** The port at the other end of its own cable. */
function farEnd(link: Link, port: Port): Port {
  const own = memberLinkAt(link, port);
  return own === undefined ? oppositePort(link, port) : own.a === port ? own.b : own.a;
}

function addressesOf(port: Port): string {
  return list(
    port.addresses.map(({ address, vlan }) =>
      vlan === undefined ? formatAddress(address) : `${formatAddress(address)} in ${vlan}`,
    ),
  );
}

/** A port: its link in both directions, first out of the port. */
export function portExplained(plan: Plan, port: Port, most?: number): Explanation[] {
  const link = plan.network.topology.linkAt(port);
  const answer = portAnswer(plan, port);
  if (link === undefined)
    return [{ answer, title: `${portName(port)}: no cable`, sentences: portWords(port), columns: [], lines: [] }];
  return [
    { answer, ...directionExplained(plan, link, port, 'line', most) },
    directionExplained(plan, link, oppositePort(link, port), 'line', most),
  ];
}

function portWords(port: Port): string[] {
  const { speed, medium, module, vlan, trunk, native, pse, pd, lag, lacp } = port;
  const words: string[] = [];
  if (speed !== undefined) words.push(`${bitRate(speed)}.`);
  if (module !== undefined) words.push(`${module.toUpperCase()}.`);
  else if (medium !== undefined) words.push(`It takes ${medium}.`);
  if (trunk !== undefined)
    words.push(`A trunk of ${list(trunk)}${native === undefined ? '' : `, ${native} without a tag`}.`);
  else if (vlan !== undefined) words.push(`An access port of ${vlan}.`);
  if (lag !== undefined) words.push(`One of the group ${lag}${lacp === 'off' ? ', without LACP' : ''}.`);
  if (pse !== undefined) words.push(`It can feed a powered device (PoE ${pse}).`);
  if (pd !== undefined)
    words.push(`It draws class ${pd.class ?? 0}${pd.milliwatts === undefined ? '' : `, ${watts(pd.milliwatts)}`}.`);
  return words;
}
