/** Where hosts and routers stand in the networks, and by which of their ports they send. */

import { type Subnet, contains } from '../standards/ipv4.ts';
import type { Device, HostRoute, Port, Site } from '../site/model.ts';
import type { Link } from './link.ts';
import { NONE } from './membership.ts';
import type { Topology } from './topology.ts';

/** A host's or router's place in one network. */
export interface Interface {
  readonly device: Device;
  readonly port: Port;
  readonly link: Link;
  readonly network: number;
  readonly address: number | undefined;
}

export class Interfaces {
  private readonly site: Site;
  private readonly topology: Topology;
  private readonly known = new Map<Device, readonly Interface[]>();

  constructor(site: Site, topology: Topology) {
    this.site = site;
    this.topology = topology;
  }

  /** In the order of the ports; a port with a trunk has one in each of its networks. */
  of(device: Device): readonly Interface[] {
    let found = this.known.get(device);
    if (found === undefined) {
      found = device.bridging
        ? []
        : device.ports.length === 1
          ? this.at(device.ports[0])
          : device.ports.flatMap((port) => this.at(port));
      this.known.set(device, found);
    }
    return found;
  }

  private at(port: Port | undefined): Interface[] {
    const link = port === undefined ? undefined : this.topology.linkOf[port.index];
    if (port === undefined || link === undefined) return [];
    const networks = link.untagged === NONE ? link.tagged : [link.untagged, ...link.tagged];
    return networks.map((network) => ({
      device: port.device,
      port,
      link,
      network,
      address: this.addressIn(port, network, link),
    }));
  }

  private addressIn(port: Port, network: number, link: Link): number | undefined {
    const vlan = this.topology.networks[network]?.vlan;
    const named = port.addresses.find((candidate) => candidate.vlan !== undefined && candidate.vlan === vlan?.name);
    if (named !== undefined) return named.address;
    const plain = port.addresses.filter((candidate) => candidate.vlan === undefined);
    const inSubnet = plain.find(({ address }) => vlan?.subnet !== undefined && contains(vlan.subnet, address));
    return (inSubnet ?? (network === link.untagged ? plain[0] : undefined))?.address;
  }

  /**
   * The interface by which a device sends to an address: of its most specific route, else of the subnet that holds
   * the address, else of the network that has a gateway, as a host that is given one gateway does.
   */
  towards(
    device: Device,
    address: number,
  ): { readonly by: Interface; readonly route: HostRoute | undefined } | undefined {
    const own = this.of(device);
    const first = own[0];
    if (first === undefined) return undefined;
    if (own.length === 1 && device.routes.length === 0) return { by: first, route: undefined };
    let best: { by: Interface; route: HostRoute | undefined; prefix: number } | undefined;
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
      const subnet = this.topology.networks[by.network]?.vlan?.subnet;
      if (subnet !== undefined) offer(by, undefined, subnet);
    }
    const found: { by: Interface; route: HostRoute | undefined } | undefined = best;
    if (found !== undefined) return found;
    return { by: own.find((candidate) => this.hasGateway(candidate)) ?? first, route: undefined };
  }

  private hasGateway({ device, network }: Interface): boolean {
    const gateway = this.topology.networks[network]?.vlan?.gateway;
    return gateway !== undefined && gateway !== device.name && this.site.deviceByName.has(gateway);
  }

  in(device: Device, network: number): Interface | undefined {
    return this.of(device).find((candidate) => candidate.network === network);
  }
}
