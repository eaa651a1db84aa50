/** What a built site needs and a described one may leave out: addresses, VLAN numbers, names of interfaces. */

import { type Subnet, contains, formatAddress, parseSubnet } from '../../server/src/standards/ipv4.ts';
import type { Interface } from '../../server/src/network/interface.ts';
import type { BroadcastDomain } from '../../server/src/network/vlan-membership.ts';
import type { Plan } from '../../server/src/plan.ts';
import { type Device, type Port, ownAddresses, portName } from '../../server/src/site/model.ts';
import { numberOf } from './numbers.ts';

/** Names of interfaces are short: Linux takes 15 characters. */
export function interfaceOf(port: Port): string {
  return `p${numberOf(portName(port))}`;
}

export class Addresses {
  private readonly plan: Plan;
  private readonly vlanIds = new Map<BroadcastDomain, number>();
  private readonly subnets = new Map<BroadcastDomain, Subnet>();
  private readonly given = new Map<string, number>();
  private readonly taken = new Set<number>();

  constructor(plan: Plan) {
    this.plan = plan;
    const declared = new Set(plan.site.vlans.map(({ id }) => id));
    let free = 3000;
    for (const [index, domain] of plan.network.topology.domains.entries()) {
      const { vlan } = domain;
      while (declared.has(free)) free++;
      this.vlanIds.set(domain, vlan?.id ?? free++);
      this.subnets.set(domain, vlan?.subnet ?? generatedSubnet(index));
    }
    for (const device of plan.site.devices) for (const { address } of ownAddresses(device)) this.taken.add(address);
    for (const vlan of plan.site.vlans) if (vlan.pool !== undefined) this.taken.add(vlan.pool.first);
  }

  /** A number that no VLAN of the site has, for ports that carry none. */
  get unusedVlanId(): number {
    return Math.max(...this.vlanIds.values(), 3000) + 1;
  }

  vlanId(domain: BroadcastDomain): number {
    return this.vlanIds.get(domain) ?? this.unusedVlanId;
  }

  subnet(domain: BroadcastDomain): Subnet {
    const subnet = this.subnets.get(domain);
    if (subnet === undefined) throw new Error(`${domain.name} is not of this site`);
    return subnet;
  }

  /** The name of the Linux interface: the port's own, or one behind a tag. */
  nameOf({ port, link, domain }: Interface): string {
    return link.untagged === domain ? interfaceOf(port) : `${interfaceOf(port)}.${this.vlanId(domain)}`;
  }

  /** The declared address, or one of the subnet that nobody has. */
  of(at: Interface): string {
    if (at.address !== undefined) return formatAddress(at.address);
    const key = `${portName(at.port)} ${this.vlanId(at.domain)}`;
    let address = this.given.get(key);
    if (address === undefined) this.given.set(key, (address = this.free(at.domain)));
    return formatAddress(address);
  }

  /** An address for something that is not in the site: where the queries of a switch come from. */
  spare(domain: BroadcastDomain): string {
    return formatAddress(this.free(domain));
  }

  /** The address from which a switch asks: that of its management, if it is in the network. */
  ofSwitch({ address, addresses }: Device, domain: BroadcastDomain): string {
    const own = addresses.find(({ vlan }) => vlan !== undefined && vlan === domain.vlan?.name);
    if (own !== undefined) return formatAddress(own.address);
    return address !== undefined && contains(this.subnet(domain), address)
      ? formatAddress(address)
      : this.spare(domain);
  }

  prefixOf(at: Interface): number {
    const subnet = this.subnet(at.domain);
    return at.address === undefined || contains(subnet, at.address) ? subnet.prefix : 24;
  }

  /** From the end of the subnet, where people seldom start counting. */
  private free(domain: BroadcastDomain): number {
    const { network: first, prefix } = this.subnet(domain);
    let address = first + 2 ** (32 - prefix) - 2;
    while (this.taken.has(address)) address--;
    this.taken.add(address);
    return address;
  }

  /** Every interface of hosts and routers. */
  get all(): Interface[] {
    return this.plan.site.devices.flatMap((device) => [...this.plan.network.interfaces.of(device)]);
  }
}

function generatedSubnet(network: number): Subnet {
  const subnet = parseSubnet(`10.200.${network % 256}.0/24`);
  if (subnet === undefined) throw new Error(`no subnet for network ${network}`);
  return subnet;
}
