/** An address that a querier sends its queries from: of one without, the next free one of the VLAN. */

import { type Edit, addEntry, nameText, nodeAt, putValue } from '../edit.ts';
import type { Device, Site, Vlan } from '../model.ts';
import { formatAddress } from '../../standards/ipv4.ts';
import { nextFreeAddress } from './address.ts';

/** Whether the switch has an address, perhaps a half-typed one; where it has addresses by VLAN, one in this VLAN. */
export function hasQuerierAddress({ item, addresses, ports }: Device, { name }: Vlan): boolean {
  if (nodeAt(item, ['address']) !== undefined || ports.some((port) => port.addresses.length > 0)) return true;
  const isHalfTyped = nodeAt(item, ['addresses']) !== undefined && addresses.length === 0;
  return isHalfTyped || addresses.some(({ vlan }) => vlan === name);
}

/** The address, and how it is written down; nothing where none is free. */
export function queriedFrom(
  site: Site,
  { item, addresses }: Device,
  vlan: Vlan,
): { readonly address: string; readonly edits: readonly (Edit | undefined)[] } | undefined {
  const free = nextFreeAddress(site, vlan);
  if (free === undefined) return undefined;
  const address = formatAddress(free);
  const edits =
    addresses.length > 0
      ? [addEntry(item, ['addresses'], nameText(vlan.name), address)]
      : putValue(item, 'address', address);
  return { address, edits };
}

/** Edits that give a switch an address to ask from where it has none; none of a router, or where none is free. */
export function addressedToAsk(site: Site, device: Device, vlan: Vlan): readonly (Edit | undefined)[] {
  if (device.kind !== 'switch' || hasQuerierAddress(device, vlan)) return [];
  return queriedFrom(site, device, vlan)?.edits ?? [];
}
