/** What a built site needs and a described one may leave out: addresses, VLAN numbers, names of interfaces. */

import { type Subnet, contains, formatAddress, parseSubnet } from '../../server/src/standards/ipv4.ts';
import type { Interface } from '../../server/src/network/interfaces.ts';
import type { Plan } from '../../server/src/plan.ts';
import type { Port } from '../../server/src/site/model.ts';

/** Names of interfaces are short: Linux takes 15 characters. */
export function interfaceOf(port: Port): string {
  return `p${port.index}`;
}

export class Addresses {
  private readonly plan: Plan;
  private readonly vlanIds: number[] = [];
  private readonly subnets: Subnet[] = [];
  private readonly given = new Map<string, number>();
  private readonly taken = new Set<number>();

  constructor(plan: Plan) {
    this.plan = plan;
    const declared = new Set(plan.site.vlans.map(({ id }) => id));
    let free = 3000;
    for (const { index, vlan } of plan.network.topology.networks) {
      while (declared.has(free)) free++;
      this.vlanIds.push(vlan?.id ?? free++);
      this.subnets.push(vlan?.subnet ?? generatedSubnet(index));
    }
    for (const port of plan.site.ports) for (const { address } of port.addresses) this.taken.add(address);
    for (const vlan of plan.site.vlans) if (vlan.pool !== undefined) this.taken.add(vlan.pool.first);
  }

  /** A number that no VLAN of the site has, for ports that carry none. */
  get unusedVlanId(): number {
    return Math.max(...this.vlanIds, 3000) + 1;
  }

  vlanId(network: number): number {
    return this.vlanIds[network] ?? this.unusedVlanId;
  }

  subnet(network: number): Subnet {
    return this.subnets[network] ?? generatedSubnet(network);
  }

  /** The name of the Linux interface: the port's own, or one behind a tag. */
  nameOf({ port, link, network }: Interface): string {
    return link.untagged === network ? interfaceOf(port) : `${interfaceOf(port)}.${this.vlanId(network)}`;
  }

  /** The declared address, or one of the subnet that nobody has. */
  of(at: Interface): string {
    if (at.address !== undefined) return formatAddress(at.address);
    const key = `${at.port.index} ${at.network}`;
    let address = this.given.get(key);
    if (address === undefined) this.given.set(key, (address = this.free(at.network)));
    return formatAddress(address);
  }

  /** For whoever is not in the site: the place from which a switch asks. */
  spare(network: number): string {
    return formatAddress(this.free(network));
  }

  prefixOf(at: Interface): number {
    const subnet = this.subnet(at.network);
    return at.address === undefined || contains(subnet, at.address) ? subnet.prefix : 24;
  }

  /** From the end of the subnet, where people seldom start counting. */
  private free(network: number): number {
    const { network: first, prefix } = this.subnet(network);
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
