/** The likeliest next cable: from a port that suits, to a device that has no cable yet. */

import type { Checked } from '../../lint/check.ts';
import { contains } from '../../standards/ipv4.ts';
import { oppositePort } from '../../network/link.ts';
import { hasVlans } from '../../network/vlan-membership.ts';
import { mediumAt } from '../../site/cable.ts';
import {
  type Connector,
  type Device,
  type Port,
  type Site,
  connectorAt,
  connectorName,
  portAt,
  portName,
} from '../../site/model.ts';
import { type Item } from '../../site/item.ts';
import { misfit, plugOf } from './suiting-port.ts';

export interface NextCable {
  readonly from: string;
  readonly to: string;
  readonly type: string;
}

/** `except` is the cable that is being written. */
export function nextCable(checked: Checked, except?: Item): NextCable | undefined {
  const { devices } = checked.plan.site;
  const taken = takenPorts(checked, except);
  const free = (device: Device): Port[] => device.ports.filter((port) => !taken.has(port));
  const outs = devices.filter(({ bridging }) => bridging).flatMap(free);
  const lines = devices
    .filter(({ kind }) => kind === 'router')
    .flatMap(free)
    .filter(isOutside);
  const hosts = devices.filter(({ kind }) => kind !== 'router');
  for (const device of [...hosts, ...devices.filter(({ kind }) => kind === 'router')]) {
    if (device.bridging || device.kind === 'patch-panel') continue;
    for (const port of free(device)) {
      if (device.kind === 'router' && isOutside(port)) continue;
      const out = device.kind === 'internet' ? lines[0] : suiting(checked, outs, port);
      if (out !== undefined) return cable(out, port);
    }
  }
  return betweenSwitches(checked, free);
}

/** The port that suits best. */
export function suiting(checked: Checked, outs: readonly Port[], port: Port): Port | undefined {
  const plug = plugOf(checked, port);
  let best: { readonly out: Port; readonly by: number } | undefined;
  for (const out of outs) {
    const by = misfit(out, plug);
    if (by !== undefined && (best === undefined || by < best.by)) best = { out, by };
  }
  return best?.out;
}

/** Whether a port of a router faces the provider: it is in no network of the house. */
function isOutside(port: Port): boolean {
  return !port.forwards && port.addresses.length === 0 && !hasVlans(port) && port.device.ports.length > 1;
}

/** Joins a switch to those that are cabled together, by the ports that carry most VLANs. */
function betweenSwitches(checked: Checked, free: (device: Device) => Port[]): NextCable | undefined {
  const { site, network } = checked.plan;
  const [first, ...others] = site.devices.filter(({ bridging, kind }) => bridging && kind !== 'router');
  if (first === undefined) return undefined;
  const beside = ({ ports }: Device): Device[] =>
    ports.flatMap((port) => {
      const link = network.topology.linkAt(port);
      return link === undefined ? [] : [oppositePort(link, port).device];
    });
  const group = (start: Device): Set<Device> => {
    const found = new Set([start]);
    for (const device of found) for (const other of beside(device)) if (other.bridging) found.add(other);
    return found;
  };
  const together = group(first);
  const portsAt = (switches: ReadonlySet<Device>): Port[] =>
    [...switches].flatMap(({ ports }) =>
      ports.flatMap((port) => {
        const link = network.topology.linkAt(port);
        const far = link === undefined ? undefined : oppositePort(link, port);
        return far === undefined || far.device.bridging ? [] : [far];
      }),
    );
  const ends = portsAt(together);
  for (const alone of others.filter((device) => !together.has(device))) {
    if (areApart(site, ends, portsAt(group(alone)))) continue;
    for (const own of byCarried(free(alone))) {
      const outs = [...together].flatMap((device) => byCarried(free(device)));
      const out = outs.find(
        (port) => carried(port) === carried(own) && (mediumAt(port) ?? 'copper') === (mediumAt(own) ?? 'copper'),
      );
      if (out !== undefined) return cable(out, own);
    }
  }
  return undefined;
}

/**
 * Whether the hosts at the ends of two groups of cables are in two networks on purpose: a router is between them, or a
 * host with an address in each, and no other host shows by its address that they are one.
 */
function areApart(site: Site, ends: readonly Port[], others: readonly Port[]): boolean {
  const between = new Set(
    ends.flatMap(({ device }) => (others.some((port) => port.device === device) ? [device] : [])),
  );
  if ([...between].some(({ routing, kind }) => routing || kind === 'router')) return true;
  const hasAddresses = (port: Port): boolean => between.has(port.device) && port.addresses.length > 0;
  if (!ends.some(hasAddresses) || !others.some(hasAddresses)) return false;
  const networks = new Set(ends.flatMap((port) => networksAt(site, port)));
  return !others.some((port) => networksAt(site, port).some((network) => networks.has(network)));
}

/** The declared networks of its addresses, by name; where none holds one, its first 24 bits, as homes have them. */
function networksAt({ vlans }: Site, { addresses }: Port): string[] {
  return addresses.map(({ address }) => {
    const vlan = vlans.find(({ subnet }) => subnet !== undefined && contains(subnet, address));
    return vlan?.name ?? `${address >>> 8}`;
  });
}

/** Ports with most VLANs first, then from the last: a switch's uplinks are mostly its last ports. */
function byCarried(ports: readonly Port[]): Port[] {
  return [...ports].reverse().sort((a, b) => (b.trunk?.length ?? 0) - (a.trunk?.length ?? 0));
}

function carried({ vlan, native, trunk }: Port): string {
  return `${vlan} ${native} ${[...(trunk ?? [])].sort().join()}`;
}

function cable(from: Port, to: Port): NextCable {
  const apart = (from.device.building ?? to.device.building) !== (to.device.building ?? from.device.building);
  const medium = mediumAt(from) ?? mediumAt(to);
  const type =
    medium === 'multimode' ? 'om4' : medium === 'single-mode' || (apart && medium === undefined) ? 'os2' : 'cat6';
  return { from: endText(from), to: endText(to), type };
}

/** The end as it is written: a device with one port is named alone. */
export function endText(port: Port): string {
  return port.device.ports.length === 1 && port.device.kind !== 'patch-panel' ? port.device.name : portName(port);
}

function takenPorts({ plan: { site } }: Checked, except: Item | undefined): Set<Port | undefined> {
  return new Set(
    site.cables.filter(({ item }) => item !== except).flatMap(({ from, to }) => [portAt(site, from), portAt(site, to)]),
  );
}

/** The coax from a free output to the next free input of another part. */
export function nextCoax({ plan: { site } }: Checked, except?: Item): NextCable | undefined {
  const taken = new Set(
    site.cables
      .filter(({ item }) => item !== except)
      .flatMap(({ from, to }) => [connectorAt(site, from), connectorAt(site, to)]),
  );
  const cabled = new Set([...taken].map((connector) => connector?.device));
  const free = site.devices
    .filter((device) => !isLedThrough(device) && device.kind !== 'multiswitch' && device.kind !== 'diplexer')
    .flatMap(({ connectorByName }) => [...connectorByName.values()])
    .filter((connector) => !taken.has(connector) && !isTerminated(connector));
  for (const to of free.filter(isInput)) {
    // Only from a source, or from a part that has a coax already: nothing reaches the others yet.
    const outs = free.filter((connector) => !isInput(connector) && connector.device !== to.device);
    const from = outs.find(({ device }) => isSource(device) || cabled.has(device));
    if (from !== undefined) return { from: plugText(from), to: plugText(to), type: 'coax-6' };
  }
  return undefined;
}

/** Whether a terminator is on it, so that it takes no coax. */
export function isTerminated({ device, name }: Connector): boolean {
  return device.aerial?.terminated.includes(name) === true;
}

/** Whether a coax usually runs through the device and does not end at it. */
export function isLedThrough({ kind }: Device): boolean {
  return kind === 'power-inserter' || kind === 'isolator' || kind === 'earth-block';
}

function isSource({ kind }: Device): boolean {
  return kind === 'aerial' || kind === 'lnb';
}

/** Whether signals come in by it. */
export function isInput({ device, name }: Connector): boolean {
  if (device.kind === 'display' || device.kind === 'tuner') return true;
  if (device.kind === 'combiner') return name !== 'out';
  if (device.kind === 'multiswitch') return !name.startsWith('out');
  return name.startsWith('in') || name === 'aerial';
}

function plugText(connector: Connector): string {
  const { device } = connector;
  return device.connectorByName.size === 1 && device.ports.length === 0 ? device.name : connectorName(connector);
}
