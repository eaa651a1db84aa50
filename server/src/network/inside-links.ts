/**
 * The link inside a device that both forwards frames and routes: a home router with switched sockets, a layer-3 switch.
 * It joins the switching and the routing side and carries the VLANs in which the device has an address.
 */

import { perObject } from '../memo.ts';
import { contains } from '../standards/ipv4.ts';
import { type Cable, type Device, type Port, type PortAddress, type Vlan, ownAddresses } from '../site/model.ts';
import { type PhysicalLink, singleLink } from './link.ts';
import { hasVlans } from './vlan-membership.ts';

export function insideLinks({
  vlans,
  devices,
}: {
  readonly vlans: readonly Vlan[];
  readonly devices: readonly Device[];
}): PhysicalLink[] {
  const inside = insideLinkUnder(vlans);
  return devices.flatMap((device) => (device.routing && device.bridging ? (inside(device) ?? []) : []));
}

/** The link inside a device under the VLANs of a site: its ports stay the same as long as the device does. */
const insideLinkUnder = perObject((vlans: readonly Vlan[]) => perObject((device: Device) => insideLink(vlans, device)));

function insideLink(vlans: readonly Vlan[], device: Device): PhysicalLink | undefined {
  const addresses = sharedAddresses(device);
  if (addresses.length === 0) return undefined;
  const trunk = device.ports.some((port) => port.forwards && hasVlans(port))
    ? [...new Set(addresses.flatMap(({ address, vlan }) => vlan ?? vlanOf(vlans, address)?.name ?? []))]
    : undefined;
  const side = (name: string, forwards: boolean): Port => ({
    device,
    name,
    keyPath: [],
    forwards,
    speed: undefined,
    medium: undefined,
    module: undefined,
    vlan: undefined,
    trunk,
    native: undefined,
    addresses: forwards ? [] : addresses,
    pse: undefined,
    pd: undefined,
    mac: device.mac,
    interface: undefined,
    lag: undefined,
    lacp: 'off',
    routerPort: false,
    forwardReports: false,
    reserved: false,
  });
  const cable: Cable = {
    item: device.item,
    name: device.name,
    from: { device: device.name, port: undefined, keyPath: [] },
    to: { device: device.name, port: undefined, keyPath: [] },
    type: undefined,
    length: undefined,
    fibres: undefined,
    through: [],
    duct: undefined,
    label: undefined,
    coax: { core: undefined, attenuation: undefined },
  };
  return singleLink({ cable, a: side('sockets', true), b: side('routing', false), capacity: undefined });
}

/** The device's own addresses, and those declared at one of its sockets: all sockets of that VLAN share them. */
function sharedAddresses(device: Device): PortAddress[] {
  const atSockets = device.ports.flatMap((port) =>
    port.forwards ? port.addresses.map((at) => ({ ...at, vlan: at.vlan ?? port.native ?? port.vlan })) : [],
  );
  return [...ownAddresses({ ...device, ports: [] }), ...atSockets];
}

function vlanOf(vlans: readonly Vlan[], address: number): Vlan | undefined {
  return vlans.find(({ subnet }) => subnet !== undefined && contains(subnet, address));
}
