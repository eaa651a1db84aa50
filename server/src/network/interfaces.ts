/** The interfaces of hosts and routers in the broadcast domains, and which of them they send by. */

import { type Subnet, contains } from '../standards/ipv4.ts';
import type { Device, HostRoute, Port } from '../site/model.ts';
import type { Link } from './link.ts';
import { type BroadcastDomain, domainsOf } from './vlan-membership.ts';

/** A host's or router's place in one broadcast domain. */
export interface Interface {
  readonly device: Device;
  readonly port: Port;
  readonly link: Link;
  readonly domain: BroadcastDomain;
  readonly address: number | undefined;
}

/** By which interface a device sends, and the route that says so, where one does. */
export interface Egress {
  readonly by: Interface;
  readonly route: HostRoute | undefined;
}

export class Interfaces {
  private readonly byDevice: ReadonlyMap<Device, readonly Interface[]>;
  private readonly deviceByName: ReadonlyMap<string, Device>;

  constructor(deviceByName: ReadonlyMap<string, Device>, linkAt: (port: Port) => Link | undefined) {
    this.deviceByName = deviceByName;
    const byDevice = new Map<Device, readonly Interface[]>();
    for (const device of deviceByName.values()) {
      if (!device.bridging)
        byDevice.set(
          device,
          device.ports.flatMap((port) => interfacesAt(port, linkAt(port))),
        );
    }
    this.byDevice = byDevice;
  }

  /** In the order of the ports; a port with a trunk has one in each of its domains. None at what forwards frames. */
  of(device: Device): readonly Interface[] {
    return this.byDevice.get(device) ?? [];
  }

  in(device: Device, domain: BroadcastDomain): Interface | undefined {
    return this.of(device).find((candidate) => candidate.domain === domain);
  }

  /**
   * The interface by which a device sends to an address: of its most specific route, else of the subnet that holds
   * the address, else of the domain that has a gateway, as a host that is given one gateway does.
   */
  towards(device: Device, address: number): Egress | undefined {
    const own = this.of(device);
    const first = own[0];
    if (first === undefined) return undefined;
    if (own.length === 1 && device.routes.length === 0) return { by: first, route: undefined };
    let best: (Egress & { readonly prefix: number }) | undefined;
    const offer = (by: Interface | undefined, route: HostRoute | undefined, subnet: Subnet): void => {
      if (by === undefined || !contains(subnet, address)) return;
      if (best === undefined || subnet.prefix > best.prefix) best = { by, route, prefix: subnet.prefix };
    };
    for (const route of device.routes)
      offer(
        own.find(({ port }) => port.name === route.port),
        route,
        route.to,
      );
    for (const by of own) {
      const subnet = by.domain.vlan?.subnet;
      if (subnet !== undefined) offer(by, undefined, subnet);
    }
    const found: Egress | undefined = best;
    return found ?? { by: own.find((candidate) => this.hasGateway(candidate)) ?? first, route: undefined };
  }

  private hasGateway({ device, domain }: Interface): boolean {
    const gateway = domain.vlan?.gateway;
    return gateway !== undefined && gateway !== device.name && this.deviceByName.has(gateway);
  }
}

function interfacesAt(port: Port, link: Link | undefined): Interface[] {
  if (link === undefined) return [];
  return domainsOf(link).map((domain) => ({
    device: port.device,
    port,
    link,
    domain,
    address: addressIn(port, domain, link),
  }));
}

function addressIn({ addresses }: Port, domain: BroadcastDomain, link: Link): number | undefined {
  const { vlan } = domain;
  const named = addresses.find((candidate) => candidate.vlan !== undefined && candidate.vlan === vlan?.name);
  if (named !== undefined) return named.address;
  const plain = addresses.filter((candidate) => candidate.vlan === undefined);
  const inSubnet = plain.find(({ address }) => vlan?.subnet !== undefined && contains(vlan.subnet, address));
  return (inSubnet ?? (domain === link.untagged ? plain[0] : undefined))?.address;
}
