/** Values for the addresses, groups and ports that are written as `auto`: free, and no two alike. */

import { broadcast, contains, formatAddress } from '../standards/ipv4.ts';
import { groupRoutes } from './group-routes.ts';
import type { Topology } from './wiring.ts';
import { AUTO, type Item } from '../site/item.ts';
import { type Device, type Port, type Site, type Stream, type Vlan, isRtsp } from '../site/model.ts';
import { portNames } from '../site/port-names.ts';
import { type Data, type KeyPath, dataAt } from '../text/syntax.ts';
import { type AddressSpace, addressBeside, spaceOfAll, usedAddresses } from '../site/free/address.ts';
import { nextFreeGroup } from '../site/free/group.ts';
import { destinations, isDatagrams, portsTaken } from '../site/free/port.ts';
import { RTP_PORT, RTSP_PORT } from '../standards/rtp.ts';

export interface Blank {
  readonly item: Item;
  readonly keyPath: KeyPath;
  readonly what: 'address' | 'group' | 'port';
  /** The value to fill in; `undefined` if the site does not say enough, or none is free. */
  readonly value: string | undefined;
  readonly vlan: Vlan | undefined;
  /** The network that an address is taken from: the VLAN, or on a site without VLANs the one that all others are in. */
  readonly space: AddressSpace | undefined;
}

/** Why a blank has no value, as the end of a sentence. */
export function whyBlank({ what, vlan, space }: Blank, site: Site): string {
  if (what !== 'address') return `no ${what} is free`;
  if (vlan !== undefined) return vlan.subnet === undefined ? `${vlan.name} has no subnet` : `${vlan.name} is full`;
  if (space !== undefined) return 'the network is full';
  if (site.vlans.length > 0) return 'its VLAN is not known; cable it, or write the address yourself';
  return usedAddresses(site.devices).size === 0
    ? 'no other address shows which network this is; write this one yourself'
    : 'the other addresses are in several networks; write this one yourself';
}

const NOWHERE = { vlan: undefined, space: undefined };

/** In the order of the site. The same site gives the same values, and filling one in changes none of the others. */
export function blanksOf(site: Site, topology: Topology): Blank[] {
  return [...addresses(site, topology), ...groups(site, topology), ...ports(site)];
}

function addresses(site: Site, topology: Topology): Blank[] {
  const given = new Set<number>();
  /** By VLAN and kind, where to look next. */
  const next = new Map<string, number>();
  return blankOnes(site.devices).flatMap((device) =>
    routesOf(device.item, 'address').map((keyPath): Blank => {
      const key = keyPath[0] === 'ports' ? String(keyPath[1]) : undefined;
      const names = key === undefined ? [] : portNames(key);
      const port =
        key === undefined ? (device.bridging ? undefined : device.ports[0]) : device.portByName.get(names[0] ?? '');
      const vlan = vlanOf(site, topology, device, port, keyPath);
      const count = Math.max(1, names.length);
      const space = vlan ?? (site.vlans.length === 0 ? spaceOfAll(site.devices) : undefined);
      const alike = `${vlan?.name} ${device.kind}`;
      const isOpen = (address: number): boolean => !given.has(address);
      const free =
        space === undefined
          ? undefined
          : freeRun(site, space, { kind: device.kind, count, isOpen, from: next.get(alike) });
      if (free !== undefined) {
        next.set(alike, free + count);
        for (let more = 0; more < count; more++) given.add(free + more);
      }
      return {
        item: device.item,
        keyPath,
        what: 'address',
        vlan,
        space,
        value: free === undefined ? undefined : formatAddress(free),
      };
    }),
  );
}

function blankOnes<T extends { readonly item: Item }>(facts: readonly T[]): T[] {
  return facts.filter(({ item }) => item.blank);
}

function routesOf({ blank, mentions }: Item, form: 'address' | 'group'): KeyPath[] {
  if (!blank) return [];
  return mentions.flatMap((mention) =>
    mention.mention === 'form' && mention.form === form && mention.text === AUTO && mention.keyPath[0] !== 'routes'
      ? [mention.keyPath]
      : [],
  );
}

/** Whether an address of the device is still to be filled in. */
export function hasBlank(item: Item): boolean {
  return routesOf(item, 'address').length > 0;
}

/**
 * The VLAN of an address. At a port: the one that it is declared for, else the one that the cable carries. A switch is
 * managed in the VLAN whose querier it is, else where other switches have their addresses.
 */
function vlanOf(
  site: Site,
  topology: Topology,
  device: Device,
  port: Port | undefined,
  keyPath: KeyPath,
): Vlan | undefined {
  if (keyPath[keyPath.length - 2] === 'addresses') return site.vlanByName.get(String(keyPath[keyPath.length - 1]));
  const named = port?.vlan ?? port?.native;
  if (named !== undefined) return site.vlanByName.get(named);
  const link = port === undefined ? undefined : topology.linkAt(port);
  if (link !== undefined) {
    const domains = link.untagged === undefined ? link.tagged : [link.untagged];
    const vlans = domains.flatMap((domain) => domain.vlan ?? []);
    return vlans.length === 1 ? vlans[0] : undefined;
  }
  const withSubnet = site.vlans.filter(({ subnet }) => subnet !== undefined);
  if (device.bridging) {
    const asks = withSubnet.find(({ querier }) => querier === device.name);
    const others = site.devices.flatMap(({ bridging, address }) =>
      bridging && address !== undefined ? [address] : [],
    );
    return (
      asks ??
      withSubnet.find(({ subnet }) => subnet !== undefined && others.some((address) => contains(subnet, address))) ??
      only(withSubnet)
    );
  }
  return only(withSubnet);
}

function only<T>(list: readonly T[]): T | undefined {
  return list.length === 1 ? list[0] : undefined;
}

interface Run {
  readonly kind: Device['kind'];
  readonly count: number;
  /** Whether no other blank has been given the address. */
  readonly isOpen: (address: number) => boolean;
  readonly from: number | undefined;
}

/** The first of that many free addresses in a row, beside devices of the same kind. */
function freeRun(site: Site, space: AddressSpace, { kind, count, isOpen, from }: Run): number | undefined {
  const { subnet, pool } = space;
  if (subnet === undefined) return undefined;
  const used = usedAddresses(site.devices);
  const last = broadcast(subnet) - 1;
  const isFree = (address: number): boolean =>
    address <= last &&
    !used.has(address) &&
    isOpen(address) &&
    !(pool !== undefined && pool.first <= address && address <= pool.last);
  const startsRun = (first: number): boolean => Array.from({ length: count }, (_, more) => first + more).every(isFree);
  return addressBeside(site, space, kind, startsRun, from);
}

function groups(site: Site, topology: Topology): Blank[] {
  const given = new Set<number>();
  /** The next group that nobody has and no other blank has been given. */
  const free = (near: number | undefined): number | undefined => {
    let group = nextFreeGroup(site, near);
    // The search begins anew from the lowest group where none is left above.
    while (group !== undefined && given.has(group)) {
      const next = nextFreeGroup(site, group);
      group = next !== undefined && next > group ? next : undefined;
    }
    return group;
  };
  let last: number | undefined;
  return blankOnes(site.streams).flatMap((stream) =>
    routesOf(stream.item, 'group').map((keyPath): Blank => {
      const above = free(last);
      const usual = above !== undefined && (last === undefined || above > last) ? above : undefined;
      const group = routedGroup(site, topology, stream, usual, free);
      if (group !== undefined) given.add(group);
      if (group === usual) last = group ?? last;
      return {
        item: stream.item,
        keyPath,
        what: 'group',
        ...NOWHERE,
        value: group === undefined ? undefined : formatAddress(group),
      };
    }),
  );
}

/** The usual group, unless the routes of the source take it elsewhere and another one to the receivers. */
function routedGroup(
  site: Site,
  topology: Topology,
  stream: Stream,
  usual: number | undefined,
  free: (near: number) => number | undefined,
): number | undefined {
  const source = site.deviceByName.get(stream.source ?? '');
  if (source === undefined || source.routes.length === 0) return usual;
  const { leavesThere, routes } = groupRoutes(site, topology, source, stream.receivers);
  if (routes.length === 0 || (usual !== undefined && leavesThere(usual))) return usual;
  const routed = routes.map(({ to }) => free(to.network));
  return routed.find((group) => group !== undefined && leavesThere(group)) ?? usual;
}

function ports(site: Site): Blank[] {
  const asked = blankOnes(site.streams);
  if (asked.length === 0) return [];
  /** The ports that are taken, by destination. */
  const taken = new Map<string | number, Set<number>>();
  const take = (stream: Stream, port: number): void => {
    for (const destination of ownDestinations(stream)) {
      let there = taken.get(destination);
      if (there === undefined) taken.set(destination, (there = new Set()));
      for (let above = portsTaken(site, stream) - 1; above >= 0; above--) there.add(port + above);
    }
  };
  for (const stream of site.streams) if (stream.port !== undefined && isDatagrams(stream)) take(stream, stream.port);
  return asked.flatMap((stream): Blank[] => {
    const { item, transport } = stream;
    if (writtenAt(item, 'port') !== AUTO) return [];
    const blank = { item, keyPath: ['port'], what: 'port', ...NOWHERE } as const;
    if (isRtsp(transport)) return [{ ...blank, value: String(RTSP_PORT) }];
    const there = ownDestinations(stream).map((destination) => taken.get(destination));
    const wanted = Math.max(2, portsTaken(site, stream));
    const isFree = (port: number): boolean => !there.some((ports) => ports?.has(port) === true);
    for (let port = RTP_PORT; port + wanted <= 65_536; port += 2) {
      if (!Array.from({ length: wanted }, (_, above) => port + above).every(isFree)) continue;
      take(stream, port);
      return [{ ...blank, value: String(port) }];
    }
    return [{ ...blank, value: undefined }];
  });
}

/** A group still to be filled in will be free, so it clashes with no other. */
function ownDestinations(stream: Stream): readonly (string | number)[] {
  return writtenAt(stream.item, 'group') === AUTO ? [`the group of ${stream.name}`] : destinations(stream);
}

function writtenAt({ data }: Item, key: string): Data | undefined {
  return dataAt(data, [key]);
}
