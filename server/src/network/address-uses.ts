/** Every address of a device of the site, with its VLANs. */

import { contains, whyNotHost } from '../standards/ipv4.ts';
import { formatMac } from '../standards/mac.ts';
import { type Device, type Port, type Site, type Vlan, portName } from '../site/model.ts';
import type { Route } from '../text/syntax.ts';
import { domainsOf } from './vlan-membership.ts';
import type { Link } from './link.ts';

export interface AddressUse {
  readonly address: number;
  readonly device: Device;
  /** Not there for an address that a switch or router has at none of its ports. */
  readonly port: Port | undefined;
  readonly route: Route;
  /** The VLAN that it is declared for, else those that the cable at its port carries; empty where neither is known. */
  readonly vlans: readonly Vlan[];
  /** The one of them whose subnet holds the address; where they are not known, the one of the site. */
  readonly home: Vlan | undefined;
}

export function addressUses(
  { vlans, devices }: Pick<Site, 'vlans' | 'devices'>,
  linkAt: (port: Port) => Link | undefined,
): readonly AddressUse[] {
  const uses: AddressUse[] = [];
  for (const device of devices) addUsesOf(device, vlans, linkAt, uses);
  return uses;
}

function addUsesOf(
  device: Device,
  declared: readonly Vlan[],
  linkAt: (port: Port) => Link | undefined,
  uses: AddressUse[],
): void {
  const add = (address: number, port: Port | undefined, route: Route, vlans: readonly Vlan[]): void => {
    const home = (vlans.length === 0 ? declared : vlans).find(
      ({ subnet }) => subnet !== undefined && contains(subnet, address),
    );
    uses.push({ address, device, port, route, vlans, home });
  };
  const named = (vlan: string | undefined): Vlan[] => declared.filter(({ name }) => name === vlan);
  if (device.address !== undefined) add(device.address, undefined, ['address'], []);
  for (const { address, vlan, route } of device.addresses) add(address, undefined, route, named(vlan));
  for (const port of device.ports) {
    for (const { address, vlan, route } of port.addresses) {
      const own = vlan ?? (port.forwards ? (port.native ?? port.vlan) : undefined);
      add(address, port, route, own === undefined ? vlansAt(linkAt, port) : named(own));
    }
  }
}

/** The untagged one first. */
function vlansAt(linkAt: (port: Port) => Link | undefined, port: Port): Vlan[] {
  const link = linkAt(port);
  return link === undefined ? [] : domainsOf(link).flatMap(({ vlan }) => vlan ?? []);
}

/** Whether an address is in the subnet of none of the VLANs; one without a subnet may be the one that it is in. */
export function isOutside({ address, home }: AddressUse, vlans: readonly Vlan[]): boolean {
  // What no host can have, address-reserved reports.
  return (
    home === undefined &&
    vlans.length > 0 &&
    vlans.every(({ subnet }) => subnet !== undefined) &&
    whyNotHost(address) === undefined
  );
}

/** `paddock-cam`, or `recorder/cams` where the device has several ports. */
export function holder({ device, port }: AddressUse): string {
  return port === undefined || device.ports.length === 1 ? device.name : portName(port);
}

/** The hardware address that has it, in small digits with colons. */
export function macOf({ device, port }: AddressUse): string | undefined {
  const { mac } = port ?? device;
  return mac === undefined ? undefined : formatMac(mac);
}

/** Whether a DHCP server is said to keep it for the device. */
export function isReserved({ device, port }: AddressUse): boolean {
  return (port ?? device).reserved;
}
