/** Free addresses of a VLAN. */

import { perObject } from '../../memo.ts';
import { broadcast, contains, firstHost, formatAddress, lastHost, whyNotHost } from '../../standards/ipv4.ts';
import { type Fix, fixOf, setValue } from '../edit.ts';
import { type Device, type Port, type Site, type Vlan, ownAddresses } from '../model.ts';
import type { Route } from '../../text/syntax.ts';

/** Every address that the devices of a site have. */
export const usedAddresses = perObject((devices: Site['devices']): ReadonlySet<number> => {
  const used = new Set<number>();
  for (const device of devices) {
    for (const { address } of ownAddresses(device)) used.add(address);
  }
  return used;
});

/**
 * The address above `near` that nobody has and no DHCP server hands out; from the lowest on where none is left above.
 * An address of another subnet keeps its place in this one if that is free. The lowest address is left to a gateway
 * that has none yet. `undefined` where the VLAN has no subnet or it is full.
 */
export function nextFreeAddress(
  site: Site,
  vlan: Pick<Vlan, 'subnet' | 'pool' | 'gateway'>,
  near?: number,
): number | undefined {
  const { subnet, pool } = vlan;
  if (subnet === undefined) return undefined;
  const used = usedAddresses(site.devices);
  const first = firstHost(subnet) + (gatewayIsDue(site, vlan) ? 1 : 0);
  const last = lastHost(subnet);
  const start =
    near === undefined
      ? first
      : contains(subnet, near)
        ? near + 1
        : subnet.network + ((near & (broadcast(subnet) - subnet.network)) >>> 0);
  return freeBetween(Math.max(start, first), last) ?? freeBetween(first, Math.min(start - 1, last));

  function freeBetween(from: number, to: number): number | undefined {
    for (let address = from; address <= to; address++) {
      if (pool !== undefined && address >= pool.first && address <= pool.last) address = pool.last;
      else if (!used.has(address)) return address;
    }
    return undefined;
  }
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
  readonly route: Route;
  readonly address: number;
}

/**
 * Gives a device another address, the next free one of the VLAN, or on a site without VLANs of those that begin alike.
 * A port of a range has no address to itself.
 */
export function nextFreeAddressFix(
  site: Site,
  vlan: Vlan | undefined,
  { device, port, route, address }: WrittenAddress,
): Fix[] {
  const around = vlan ?? (site.vlans.length === 0 ? alike(address) : undefined);
  const free = around === undefined ? undefined : nextFreeAddress(site, around, address);
  if (
    free === undefined ||
    whyNotHost(free) !== undefined ||
    (port !== undefined && route[0] === 'ports' && route[1] !== port.name)
  )
    return [];
  const text = formatAddress(free);
  return fixOf(
    `Use ${text}, ${vlan === undefined ? 'which no device here has' : `the next free address of ${vlan.name}`}`,
    setValue(device.item, route, text),
  );
}

/** Where no subnet is declared, most likely that of a home: the first three numbers. Common practice, no source. */
function alike(address: number): Pick<Vlan, 'subnet' | 'pool' | 'gateway'> {
  return {
    subnet: { network: (address & 0xffffff00) >>> 0, prefix: 24, hostBits: false },
    pool: undefined,
    gateway: undefined,
  };
}
