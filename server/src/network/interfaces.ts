/** The interfaces of hosts and routers in the broadcast domains, and which of them they send by. */

import { lastResult, perObject } from '../memo.ts';
import { contains } from '../standards/ipv4.ts';
import { type Device, type Port, type PortAddress, type Site, type Vlan, addressesAt } from '../site/model.ts';
import { canForward } from './can-forward.ts';
import type { RouteTarget } from '../site/multicast-route.ts';
import type { Interface } from './interface.ts';
import { type Link, linkEnd } from './link.ts';
import { type BroadcastDomain, domainsOf } from './vlan-membership.ts';
import { RouteTable, type NextHop, type RouteEntry } from './route-table.ts';

export class Interfaces {
  private readonly byDevice: ReadonlyMap<Device, readonly Interface[]>;
  private readonly deviceByName: ReadonlyMap<string, Device>;
  private readonly vlans: readonly Vlan[];
  private readonly gateways: ReadonlySet<string | undefined>;
  private readonly holders: () => ReadonlyMap<BroadcastDomain, ReadonlyMap<number | undefined, Interface>>;
  /** The routes of a device. */
  readonly table: (device: Device) => RouteTable;

  constructor(
    { vlans, deviceByName }: Pick<Site, 'vlans' | 'deviceByName'>,
    { linkAt, inside }: { readonly linkAt: (port: Port) => Link | undefined; readonly inside: readonly Link[] },
  ) {
    this.vlans = vlans;
    this.gateways = new Set(vlans.map(({ gateway }) => gateway));
    this.deviceByName = deviceByName;
    const byDevice = new Map<Device, readonly Interface[]>();
    for (const device of deviceByName.values()) {
      if (device.ports.every(({ forwards }) => forwards)) continue;
      const own: Interface[] = [];
      for (const port of device.ports) if (!port.forwards) addInterfaces(own, port, linkAt(port));
      byDevice.set(device, own);
    }
    for (const link of inside) {
      const own = [...(byDevice.get(link.b.device) ?? [])];
      addInterfaces(own, link.b, link);
      byDevice.set(link.b.device, own);
    }
    this.byDevice = byDevice;
    this.holders = lastResult(() => holdersOf(byDevice));
    this.table = perObject((device) => this.tableOf(device));
  }

  /**
   * The interfaces of a device in the order of its ports; a port with a trunk has one in each of its domains. A device
   * that only forwards frames has none.
   */
  of(device: Device): readonly Interface[] {
    return this.byDevice.get(device) ?? [];
  }

  in(device: Device, domain: BroadcastDomain): Interface | undefined {
    return this.of(device).find((candidate) => candidate.domain === domain);
  }

  /** Whether it forwards packets: a router, or a host that a VLAN names as its gateway. */
  forwards(device: Device): boolean {
    return device.routing || (canForward(device) && this.gateways.has(device.name));
  }

  /** The interface with an address in a network; a router there that declares no address may have it. */
  private holder(domain: BroadcastDomain, address: number): Interface | undefined {
    const inDomain = this.holders().get(domain);
    return inDomain?.get(address) ?? inDomain?.get(undefined);
  }

  /** The target of a route that sends by an interface. */
  target({ device, port, domain }: Interface): RouteTarget {
    const several = this.of(device).filter((other) => other.port === port).length > 1;
    return { port: port.name, vlan: several ? domain.vlan?.name : undefined };
  }

  /** How a device sends to a group; `undefined` where it has no route for it. */
  towardsGroup(device: Device, group: number): RouteEntry | undefined {
    return this.table(device).towards({ address: group, domain: undefined });
  }

  /** How a device sends to an interface of another. */
  towards(device: Device, { address, domain }: Interface): RouteEntry | undefined {
    return this.table(device).towards({ address, domain });
  }

  private tableOf(device: Device): RouteTable {
    return new RouteTable({
      device,
      own: this.of(device),
      holder: (domain, address) => this.holder(domain, address),
      gatewayOf: (by) => this.gatewayOf(by),
      subnetOf: (address) => this.vlans.find(({ subnet }) => subnet !== undefined && contains(subnet, address))?.subnet,
    });
  }

  private gatewayOf({ device, domain }: Interface): NextHop | undefined {
    if (device.kind === 'internet') return this.routerBeside(device, domain);
    const name = domain.vlan?.gateway;
    const gateway = name === undefined || name === device.name ? undefined : this.deviceByName.get(name);
    if (gateway === undefined) return undefined;
    const at = this.in(gateway, domain);
    return { address: at?.address, at };
  }

  /** The router at the end of the provider's line. */
  private routerBeside(device: Device, domain: BroadcastDomain): NextHop | undefined {
    for (const [other, interfaces] of this.byDevice) {
      const at = other === device || !other.routing ? undefined : interfaces.find((by) => by.domain === domain);
      if (at !== undefined) return { address: at.address, at };
    }
    return undefined;
  }
}

/** Interfaces by network and address; under `undefined` the first possible router that declares no address. */
function holdersOf(
  byDevice: ReadonlyMap<Device, readonly Interface[]>,
): ReadonlyMap<BroadcastDomain, ReadonlyMap<number | undefined, Interface>> {
  const found = new Map<BroadcastDomain, Map<number | undefined, Interface>>();
  for (const [device, interfaces] of byDevice) {
    for (const at of interfaces) {
      if (at.address === undefined && !canForward(device)) continue;
      const inDomain = found.get(at.domain) ?? new Map<number | undefined, Interface>();
      found.set(at.domain, inDomain);
      if (!inDomain.has(at.address)) inDomain.set(at.address, at);
    }
  }
  return found;
}

/** Adds those of a port. Aggregated ports are one interface, at the first cable's port. */
function addInterfaces(to: Interface[], port: Port, link: Link | undefined): void {
  if (link === undefined || linkEnd(link, port) !== port) return;
  const { device } = port;
  for (const domain of domainsOf(link)) to.push({ device, port, link, domain, address: addressIn(port, domain, link) });
}

function addressIn(port: Port, domain: BroadcastDomain, link: Link): number | undefined {
  const addresses = addressesAt(port);
  const { vlan } = domain;
  const named = addresses.find((candidate) => candidate.vlan !== undefined && candidate.vlan === vlan?.name);
  if (named !== undefined) return named.address;
  const isPlain = (candidate: PortAddress): boolean => candidate.vlan === undefined;
  const inSubnet = addresses.find(
    (candidate) => isPlain(candidate) && vlan?.subnet !== undefined && contains(vlan.subnet, candidate.address),
  );
  return (inSubnet ?? (domain === link.untagged ? addresses.find(isPlain) : undefined))?.address;
}
