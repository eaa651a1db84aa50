/** Every address that a device of the site has, with the VLANs that it stands in. */

import { contains } from '../standards/ipv4.ts';
import { type Device, type Port, type Site, type Vlan, portName } from '../site/model.ts';
import type { Route } from '../text/syntax.ts';
import { NONE } from './membership.ts';
import type { Topology } from './topology.ts';

export interface AddressUse {
  readonly address: number;
  readonly device: Device;
  /** Not there for the address by which a switch is managed. */
  readonly port: Port | undefined;
  readonly route: Route;
  /** The VLAN that it is declared for, else those that the cable at its port carries; empty where neither is known. */
  readonly vlans: readonly Vlan[];
  /** The one of them whose subnet holds the address; where they are not known, the one of the site. */
  readonly home: Vlan | undefined;
}

const known = new WeakMap<Topology, readonly AddressUse[]>();

export function addressUses(site: Site, topology: Topology): readonly AddressUse[] {
  let uses = known.get(topology);
  if (uses === undefined)
    known.set(topology, (uses = site.devices.flatMap((device) => usesOf(site, topology, device))));
  return uses;
}

function usesOf(site: Site, topology: Topology, device: Device): AddressUse[] {
  const uses: AddressUse[] = [];
  const add = (address: number, port: Port | undefined, route: Route, vlans: readonly Vlan[]): void => {
    const home = (vlans.length === 0 ? site.vlans : vlans).find(
      ({ subnet }) => subnet !== undefined && contains(subnet, address),
    );
    uses.push({ address, device, port, route, vlans, home });
  };
  if (device.address !== undefined) add(device.address, undefined, ['address'], []);
  for (const port of device.ports) {
    for (const { address, vlan, route } of port.addresses) {
      if (vlan === undefined) add(address, port, route, vlansAt(topology, port));
      else add(address, port, route, [site.vlanByName.get(vlan) ?? []].flat());
    }
  }
  return uses;
}

/** The untagged one first. */
function vlansAt(topology: Topology, port: Port): Vlan[] {
  const link = topology.linkOf[port.index];
  if (link === undefined) return [];
  const networks = link.untagged === NONE ? link.tagged : [link.untagged, ...link.tagged];
  return networks.flatMap((network) => topology.networks[network]?.vlan ?? []);
}

/** `paddock-cam`, or `recorder/cams` where the device has several ports. */
export function holder({ device, port }: AddressUse): string {
  return port === undefined || device.ports.length === 1 ? device.name : portName(port);
}
