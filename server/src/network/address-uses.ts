/** Every address of a device of the site, with its VLANs. */

import { contains, whyNotHost } from '../standards/ipv4.ts';
import { formatMac } from '../standards/mac.ts';
import { type Device, type Port, type Site, type Vlan, portName } from '../site/model.ts';
import type { KeyPath } from '../text/syntax.ts';
import { domainsOf } from './vlan-membership.ts';
import type { Link } from './link.ts';

export interface AddressUse {
  readonly address: number;
  readonly device: Device;
  /** `undefined` for an address that a switch or router has at none of its ports. */
  readonly port: Port | undefined;
  readonly keyPath: KeyPath;
  /** The VLAN that it is declared for, else those of the cable at its port; empty where neither is known. */
  readonly vlans: readonly Vlan[];
  /** Which of these VLANs, or of all of the site if they are not known, has a subnet that holds the address. */
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
  const add = (address: number, port: Port | undefined, keyPath: KeyPath, vlans: readonly Vlan[]): void => {
    const home = (vlans.length === 0 ? declared : vlans).find(
      ({ subnet }) => subnet !== undefined && contains(subnet, address),
    );
    uses.push({ address, device, port, keyPath, vlans, home });
  };
  const named = (vlan: string | undefined): Vlan[] => declared.filter(({ name }) => name === vlan);
  if (device.address !== undefined) add(device.address, undefined, ['address'], []);
  for (const { address, vlan, keyPath } of device.addresses) add(address, undefined, keyPath, named(vlan));
  for (const port of device.ports) {
    for (const { address, vlan, keyPath } of port.addresses) {
      const declaredFor = vlan ?? (port.forwards ? (port.native ?? port.vlan) : undefined);
      add(address, port, keyPath, declaredFor === undefined ? vlansAt(linkAt, port) : named(declaredFor));
    }
  }
}

/** The VLANs of the cable at a port, the untagged one first. */
function vlansAt(linkAt: (port: Port) => Link | undefined, port: Port): Vlan[] {
  const link = linkAt(port);
  const vlans: Vlan[] = [];
  if (link !== undefined) for (const { vlan } of domainsOf(link)) if (vlan !== undefined) vlans.push(vlan);
  return vlans;
}

/** Whether an address is in the subnet of none of the VLANs; a VLAN without a subnet may hold any address. */
export function isOutside({ address, home }: AddressUse, vlans: readonly Vlan[]): boolean {
  // The rule address-reserved reports an address that no host can have.
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

/** The MAC address of the interface that has it, in lower case with colons. */
export function macOf({ device, port }: AddressUse): string | undefined {
  const { mac } = port ?? device;
  return mac === undefined ? undefined : formatMac(mac);
}

/** Whether a DHCP server keeps it for the device. */
export function isReserved({ device, port }: AddressUse): boolean {
  return (port ?? device).reserved;
}
