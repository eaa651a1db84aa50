/** Free addresses of a VLAN. */

import { perObject } from '../../memo.ts';
import {
  type ParsedSubnet,
  broadcast,
  contains,
  firstHost,
  formatAddress,
  lastHost,
  whyNotHost,
} from '../../standards/ipv4.ts';
import { type Fix, fixOf, setValue } from '../edit.ts';
import { type Device, type DeviceKind, type Port, type Site, type Vlan, ownAddresses } from '../model.ts';
import type { KeyPath } from '../../text/syntax.ts';
import { asName } from '../../text/words.ts';

/** Every address that the devices of a site have. */
export const usedAddresses = perObject((devices: Site['devices']): ReadonlySet<number> => {
  const used = new Set<number>();
  for (const device of devices) {
    for (const { address } of ownAddresses(device)) used.add(address);
  }
  return used;
});

/**
 * The first address above `near` that nobody has and no DHCP server hands out; the lowest where none is left above.
 * An address of another subnet keeps its place in this one if that is free. The lowest address is left to a gateway
 * that has none yet. `undefined` where the VLAN has no subnet or it is full.
 */
export function nextFreeAddress(
  site: Site,
  vlan: Pick<Vlan, 'subnet' | 'pool' | 'gateway'>,
  near?: number,
): number | undefined {
  for (const address of freeAddresses(site, vlan, near)) return address;
  return undefined;
}

/** All free addresses, in the order in which they are given out. */
export function* freeAddresses(
  site: Site,
  vlan: Pick<Vlan, 'subnet' | 'pool' | 'gateway'>,
  near?: number,
): Generator<number> {
  const { subnet, pool } = vlan;
  if (subnet === undefined) return;
  const used = usedAddresses(site.devices);
  const first = firstHost(subnet) + (gatewayIsDue(site, vlan) ? 1 : 0);
  const last = lastHost(subnet);
  const start =
    near === undefined
      ? first
      : contains(subnet, near)
        ? near + 1
        : subnet.network + ((near & (broadcast(subnet) - subnet.network)) >>> 0);
  yield* freeBetween(Math.max(start, first), last);
  yield* freeBetween(first, Math.min(start - 1, last));

  function* freeBetween(from: number, to: number): Generator<number> {
    for (let address = from; address <= to; address++) {
      if (pool !== undefined && address >= pool.first && address <= pool.last) address = pool.last;
      else if (!used.has(address)) yield address;
    }
  }
}

/** The number of `freeAddresses`, without going through them. */
export function countFreeAddresses(site: Site, vlan: Pick<Vlan, 'subnet' | 'pool' | 'gateway'>): number {
  const { subnet, pool } = vlan;
  if (subnet === undefined) return 0;
  const first = firstHost(subnet) + (gatewayIsDue(site, vlan) ? 1 : 0);
  const last = lastHost(subnet);
  const isIn = (address: number, from: number, to: number): boolean => address >= from && address <= to;
  const [from, to] = pool === undefined ? [0, -1] : [Math.max(first, pool.first), Math.min(last, pool.last)];
  const used = [...usedAddresses(site.devices)].filter((at) => isIn(at, first, last) && !isIn(at, from, to));
  return Math.max(0, last - first + 1 - Math.max(0, to - from + 1) - used.length);
}

/** Host numbers from which a kind of device is usually counted up in a subnet of 256; common practice, no source. */
const USUAL: Partial<Readonly<Record<DeviceKind, number>>> = {
  'switch': 2,
  'server': 5,
  'tuner': 9,
  'access-point': 11,
  'computer': 21,
  'camera': 31,
  'display': 61,
};

/** A subnet of fewer addresses is too small to leave some out. */
const SMALL = 16;

/** A network to take addresses from: a VLAN's, or on a site without VLANs the one in use. */
export type AddressSpace = Pick<Vlan, 'subnet' | 'pool' | 'gateway'>;

/**
 * A free address beside those that devices of the same kind have, or where that kind usually begins; filling one in
 * does not change the next. A router takes the lowest; all others leave out the first and the last.
 *
 * @param isFree what else must hold for an address that nobody uses
 * @param from where the last search for the same kind ended
 */
export function addressBeside(
  site: Site,
  vlan: AddressSpace,
  kind: DeviceKind | undefined,
  isFree: (address: number) => boolean = () => true,
  from?: number,
): number | undefined {
  const { subnet, pool } = vlan;
  if (subnet === undefined) return undefined;
  const used = usedAddresses(site.devices);
  const isSmall = broadcast(subnet) - subnet.network + 1 < SMALL;
  const edge = isSmall || kind === 'router' ? 0 : 1;
  const first = firstHost(subnet) + (kind === 'router' ? 0 : Math.max(edge, gatewayIsDue(site, vlan) ? 1 : 0));
  const last = lastHost(subnet) - edge;
  const base = from ?? (kind === 'router' ? first : Math.max(first, baseOf(site, subnet, kind)));
  return search(base, last) ?? search(first, base - 1);

  function search(from: number, to: number): number | undefined {
    for (let address = from; address <= to; address++) {
      if (pool !== undefined && address >= pool.first && address <= pool.last) address = pool.last;
      else if (!used.has(address) && isFree(address)) return address;
    }
    return undefined;
  }
}

/** The lowest address of the kind's devices; the usual first one where they were counted up from that. */
function baseOf({ devices }: Site, subnet: ParsedSubnet, kind: DeviceKind | undefined): number {
  const usual = subnet.network + ((kind === undefined ? undefined : USUAL[kind]) ?? 2);
  let lowest: number | undefined;
  let alike = 0;
  for (const device of devices) {
    if (device.kind !== kind) continue;
    alike++;
    for (const { address } of ownAddresses(device))
      if (contains(subnet, address) && (lowest === undefined || address < lowest)) lowest = address;
  }
  const isCountedUp = lowest !== undefined && lowest > usual && lowest < usual + alike;
  return lowest === undefined || isCountedUp ? usual : lowest;
}

/** On a site whose VLANs have no subnets, the network of 256 addresses that most devices are in. */
export const spaceInUse = perObject((devices: Site['devices']): AddressSpace | undefined =>
  spaceOfMost(addressesOf(devices)),
);

/** The network of 256 addresses that most of these addresses are in. */
export function spaceOfMost(addresses: readonly number[]): AddressSpace | undefined {
  const [most] = [...networksOf(addresses)].sort(([, a], [, b]) => b - a)[0] ?? [];
  return most === undefined ? undefined : alike(most);
}

/** The network of 256 addresses that all devices with an address are in. */
export const spaceOfAll = perObject((devices: Site['devices']): AddressSpace | undefined => {
  const [only, other] = networksOf(addressesOf(devices)).keys();
  return only === undefined || other !== undefined ? undefined : alike(only);
});

function addressesOf(devices: Site['devices']): number[] {
  return devices.flatMap((device) => ownAddresses(device).map(({ address }) => address));
}

/** How many of them are in each network of 256. */
function networksOf(addresses: readonly number[]): ReadonlyMap<number, number> {
  const uses = new Map<number, number>();
  for (const address of addresses) {
    const { network } = subnetAlike(address);
    uses.set(network, (uses.get(network) ?? 0) + 1);
  }
  return uses;
}

function gatewayIsDue(site: Site, { gateway, subnet }: Pick<Vlan, 'gateway' | 'subnet'>): boolean {
  const device = gateway === undefined ? undefined : site.deviceByName.get(gateway);
  if (device === undefined || subnet === undefined) return false;
  return !ownAddresses(device).some(({ address }) => contains(subnet, address));
}

/** An address where it is written; without a port it is a switch's own. */
export interface WrittenAddress {
  readonly device: Device;
  readonly port: Port | undefined;
  readonly keyPath: KeyPath;
  readonly address: number;
}

/**
 * Gives a device another address: the next free one of the VLAN, or on a site without VLANs of the same network of 256.
 * A port that is declared in a range has no address of its own.
 */
export function nextFreeAddressFix(
  site: Site,
  vlan: Vlan | undefined,
  { device, port, keyPath, address }: WrittenAddress,
): Fix[] {
  const around = vlan ?? (site.vlans.length === 0 ? alike(address) : undefined);
  const free = around === undefined ? undefined : nextFreeAddress(site, around, address);
  if (
    free === undefined ||
    whyNotHost(free) !== undefined ||
    (port !== undefined && keyPath[0] === 'ports' && keyPath[1] !== port.name)
  )
    return [];
  const text = formatAddress(free);
  return fixOf(
    `Use ${text}, ${vlan === undefined ? 'which no device here has' : `the next free address of ${asName(vlan.name)}`}`,
    setValue(device.item, keyPath, text),
  );
}

/** Where no subnet is declared, most likely that of a home: the first three numbers. Common practice, no source. */
export function alike(address: number): AddressSpace {
  return { subnet: subnetAlike(address), pool: undefined, gateway: undefined };
}

function subnetAlike(address: number): ParsedSubnet {
  return { network: (address & 0xffffff00) >>> 0, prefix: 24, hostBits: false };
}
