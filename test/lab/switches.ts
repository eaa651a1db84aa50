/** Each device that forwards frames as a bridge of Open vSwitch, with the ports, VLANs and snooping of the site. */

import { pathCost } from '../../server/src/standards/spanning-tree.ts';
import type { BroadcastDomain } from '../../server/src/network/vlan-membership.ts';
import type { Plan } from '../../server/src/plan.ts';
import { type Link, linkEnd, oppositePort } from '../../server/src/network/link.ts';
import type { Device, Port } from '../../server/src/site/model.ts';
import { type Addresses, interfaceOf } from './addresses.ts';
import { numberOf } from './numbers.ts';

/** bit/s, where neither end of a cable declares a speed. */
const USUAL_SPEED = 1_000_000_000;

export function bridgeOf(device: Device): string {
  return `s${numberOf(device.name)}`;
}

/** The end of a querier's cable that is at its switch. */
export interface Attachment {
  readonly device: Device;
  readonly name: string;
  /** The broadcast domain that it asks in. */
  readonly domain: BroadcastDomain;
}

/** One transaction of ovs-vsctl that makes all bridges of a site; their ends of the cables are there already. */
export function bridgeCommands(plan: Plan, addresses: Addresses, attachments: readonly Attachment[]): string[] {
  const commands: string[] = [];
  const bridges = plan.site.devices.filter(({ bridging }) => bridging);
  const byName = [...bridges].sort((a, b) => (a.name < b.name ? -1 : 1));
  const addressed = bridges.every(({ mac, spanningTree }) => mac !== undefined || !spanningTree);
  for (const device of bridges) {
    const bridge = bridgeOf(device);
    // Where priorities are equal the lower address becomes root; without addresses in the site names have their order.
    const mac = addressed ? device.mac : `02:00:00:00:01:${(byName.indexOf(device) + 1).toString(16).padStart(2, '0')}`;
    const settings = [
      'datapath_type=netdev',
      `mcast_snooping_enable=${device.snooping}`,
      `other_config:mcast-snooping-disable-flood-unregistered=${device.unregistered === 'drop'}`,
      `other_config:hwaddr="${mac}"`,
      `rstp_enable=${device.spanningTree}`,
      `other_config:rstp-address="${mac}"`,
      `other_config:rstp-priority=${device.spanningTreePriority}`,
      // A converter passes on every frame, those of spanning tree too.
      `other_config:forward-bpdu=${device.kind === 'media-converter'}`,
    ];
    commands.push('--', 'add-br', bridge, '--', 'set', 'bridge', bridge, ...settings);
    const inside = plan.network.topology.inside.filter(({ a }) => a.device === device).map(({ a }) => a);
    for (const [position, port] of [...device.ports.filter(({ forwards }) => forwards), ...inside].entries())
      commands.push(...portCommand(plan, addresses, bridge, port, position));
  }
  for (const { device, name, domain } of attachments) {
    commands.push('--', 'add-port', bridgeOf(device), name);
    if (isCarriedTagged(plan, device, domain)) commands.push(`tag=${addresses.vlanId(domain)}`);
    commands.push('--', 'set', 'port', name, 'other_config:rstp-admin-edge=true');
  }
  return commands;
}

function portCommand(plan: Plan, addresses: Addresses, bridge: string, port: Port, position: number): string[] {
  const link = plan.network.topology.linkAt(port);
  // Of aggregated ports the first stands for all.
  if (link === undefined || linkEnd(link, port) !== port) return [];
  const isBond = link.members.length > 1;
  const name = isBond ? bondOf(port) : interfaceOf(port);
  const far = oppositePort(link, port);
  const neighbour = far.device;
  // Ports are ranked by number; the cost of a cable follows its declared speed, not that of the virtual one.
  const number = /^\d+$/.test(port.name) ? Number(port.name) : 1000 + position;
  const settings = [
    `other_config:rstp-port-num=${number}`,
    `other_config:rstp-path-cost=${pathCost(link.capacity ?? USUAL_SPEED)}`,
    `other_config:rstp-admin-edge=${!(far.forwards && neighbour.spanningTree) && neighbour.kind !== 'media-converter'}`,
    `other_config:rstp-auto-edge=false`,
    `other_config:mcast-snooping-flood=${port.routerPort}`,
    `other_config:mcast-snooping-flood-reports=${port.routerPort || port.forwardReports}`,
  ];
  return [
    '--',
    ...(isBond ? ['add-bond', bridge, name, ...membersAt(link, port)] : ['add-port', bridge, name]),
    ...(isBond ? bondSettings(port) : []),
    ...vlanSettings(plan, addresses, port),
    '--',
    'set',
    'port',
    name,
    ...settings,
  ];
}

/** The name of an aggregated port at its bridge. */
export function bondOf(port: Port): string {
  return `g${interfaceOf(port)}`;
}

function membersAt({ members }: Link, { device }: Port): string[] {
  return members.map(({ a, b }) => interfaceOf(a.device === device ? a : b));
}

/** The cable is chosen by addresses and ports, and no stream is moved to another one later. */
function bondSettings({ lacp }: Port): string[] {
  return [
    `lacp=${lacp}`,
    'bond_mode=balance-tcp',
    'other_config:lacp-time=fast',
    'other_config:bond-rebalance-interval=0',
  ];
}

/** As written on the port; on a device without VLANs frames pass as they come, and a port without one is in none. */
function vlanSettings(plan: Plan, addresses: Addresses, port: Port): string[] {
  const id = (name: string | undefined): number[] => {
    const vlan = name === undefined ? undefined : plan.site.vlanByName.get(name);
    return vlan === undefined ? [] : [addresses.vlanId(plan.network.topology.domainOf(vlan))];
  };
  const untagged = id(port.trunk === undefined ? (port.vlan ?? port.native) : (port.native ?? port.vlan))[0];
  if (port.trunk === undefined) {
    if (untagged !== undefined) return [`tag=${untagged}`];
    return hasVlans(port.device) ? [`tag=${addresses.unusedVlanId}`] : [];
  }
  const tagged = port.trunk.flatMap(id);
  if (untagged === undefined) return ['vlan_mode=trunk', `trunks=${tagged.join(',')}`];
  return ['vlan_mode=native-untagged', `tag=${untagged}`, `trunks=${[...new Set([...tagged, untagged])].join(',')}`];
}

function hasVlans(device: Device): boolean {
  return device.ports.some(
    ({ vlan, trunk, native }) => vlan !== undefined || trunk !== undefined || native !== undefined,
  );
}

/** Whether frames of a network are tagged inside a bridge: always, unless the bridge has no VLANs. */
function isCarriedTagged(plan: Plan, device: Device, domain: BroadcastDomain): boolean {
  if (hasVlans(device)) return true;
  return plan.network.topology.links.some(
    ({ a, b, tagged }) => (a.device === device || b.device === device) && tagged.includes(domain),
  );
}

/** Turns a bridge from the rapid spanning tree to the older one. */
export function olderSpanningTree(device: Device): string[] {
  const bridge = bridgeOf(device);
  const priority = `other_config:stp-priority=${device.spanningTreePriority}`;
  return ['--', 'set', 'bridge', bridge, 'rstp_enable=false', 'stp_enable=true', priority];
}
