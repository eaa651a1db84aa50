/** Each host and router as a network namespace, with its interfaces, addresses and routes. */

import { formatSubnet, isMulticast } from '../../server/src/standards/ipv4.ts';
import type { Interface } from '../../server/src/network/interface.ts';
import type { Plan } from '../../server/src/plan.ts';
import type { Device, Port } from '../../server/src/site/model.ts';
import { type Addresses, interfaceOf } from './addresses.ts';

/** Checksums and tags must stand in the frames, and frames be what the counters see: none joined. */
export function plainFrames(name: string): string {
  return `ethtool -K ${name} tx off rx off tso off gso off gro off txvlan off rxvlan off >/dev/null`;
}

/** The shell commands that make a namespace, which holds its ends of the cables already, this host. */
export function hostCommands(plan: Plan, addresses: Addresses, device: Device): string[] {
  const interfaces = plan.network.interfaces.of(device);
  const commands = settings(device);
  for (const name of device.ports.flatMap((port) => interfacesOf(plan, addresses, port))) {
    commands.push(plainFrames(name), `ip link set ${name} up`);
  }
  for (const at of interfaces) {
    commands.push(`ip address add ${addresses.of(at)}/${addresses.prefixOf(at)} dev ${addresses.nameOf(at)}`);
  }
  return [...commands, ...routeCommands(plan, addresses, device, interfaces)];
}

function settings(device: Device): string[] {
  const set = (key: string, value: number): string => `echo ${value} >/proc/sys/net/${key}`;
  return [
    ...['all', 'default'].flatMap((which) => [
      set(`ipv6/conf/${which}/disable_ipv6`, 1),
      set(`ipv4/conf/${which}/rp_filter`, 0),
      set(`ipv4/conf/${which}/send_redirects`, 0),
      // A host with two ports in one subnet answers for each by that port alone.
      set(`ipv4/conf/${which}/arp_ignore`, 1),
      set(`ipv4/conf/${which}/arp_announce`, 2),
    ]),
    // A machine that is busy for a moment is no lost packet: nothing is sent a second time before it must be.
    set('ipv4/tcp_early_retrans', 0),
    set('ipv4/ip_forward', device.kind === 'router' ? 1 : 0),
    'ip link set lo up',
  ];
}

/** The names of a port's interfaces at its host: one for frames without a tag, and one to each VLAN of its trunk. */
function interfacesOf(plan: Plan, addresses: Addresses, port: Port): string[] {
  if (plan.network.topology.linkAt(port) === undefined) return [];
  const name = interfaceOf(port);
  return [name, ...taggedIds(plan, addresses, port).map((id) => `${name}.${id}`)];
}

/** The VLANs that a host has a trunk for, by number. */
export function taggedIds(plan: Plan, addresses: Addresses, port: Port): number[] {
  const link = plan.network.topology.linkAt(port);
  if (link === undefined) return [];
  const ids = (port.trunk ?? []).flatMap((name) => {
    const vlan = plan.site.vlanByName.get(name);
    const domain = vlan === undefined ? undefined : plan.network.topology.domainOf(vlan);
    return domain === undefined || domain === link.untagged ? [] : [addresses.vlanId(domain)];
  });
  return [...new Set(ids)];
}

function routeCommands(plan: Plan, addresses: Addresses, device: Device, interfaces: readonly Interface[]): string[] {
  const commands: string[] = [];
  let hasDefault = false;
  for (const { to, port } of device.routes) {
    const by = interfaces.find((candidate) => candidate.port.name === port);
    if (by === undefined) continue;
    if (to.prefix === 0) hasDefault = true;
    const via = isMulticast(to.network) && to.prefix >= 4 ? undefined : gatewayOf(plan, addresses, by);
    commands.push(
      `ip route replace ${formatSubnet(to)} ${via === undefined ? '' : `via ${via} `}dev ${addresses.nameOf(by)}${onLink(via)}`,
    );
  }
  if (device.kind === 'router') commands.push(...routerRoutes(plan, addresses, device));
  else if (!hasDefault) {
    const by = interfaces.find((candidate) => gatewayOf(plan, addresses, candidate) !== undefined) ?? interfaces[0];
    if (by !== undefined) {
      const via = gatewayOf(plan, addresses, by);
      commands.push(
        `ip route add default ${via === undefined ? '' : `via ${via} `}dev ${addresses.nameOf(by)}${onLink(via)}`,
      );
    }
  }
  return commands;
}

/** A gateway is asked for on its cable also by a host whose address is in another subnet. */
function onLink(via: string | undefined): string {
  return via === undefined ? '' : ' onlink';
}

/** The address of the router that a network names as its gateway. */
function gatewayOf(plan: Plan, addresses: Addresses, { device, domain }: Interface): string | undefined {
  const name = domain.vlan?.gateway;
  const gateway = name === undefined ? undefined : plan.site.deviceByName.get(name);
  if (gateway === undefined || gateway === device) return undefined;
  const at = plan.network.interfaces.in(gateway, domain);
  return at === undefined ? undefined : addresses.of(at);
}

/** To each network that a router is not in, by the fewest routers. */
function routerRoutes(plan: Plan, addresses: Addresses, router: Device): string[] {
  const routers = plan.site.devices.filter(({ kind }) => kind === 'router');
  const own = plan.network.interfaces.of(router);
  const reached = new Set(own.map(({ domain }) => domain));
  const commands: string[] = [];
  const queue = own.map((by) => ({ domain: by.domain, by, next: undefined as Interface | undefined }));
  for (const { domain, by, next } of queue) {
    for (const other of routers) {
      const into = plan.network.interfaces.in(other, domain);
      if (other === router || into === undefined) continue;
      for (const out of plan.network.interfaces.of(other)) {
        if (reached.has(out.domain)) continue;
        reached.add(out.domain);
        const hop = next ?? into;
        queue.push({ domain: out.domain, by, next: hop });
        const subnet = formatSubnet(addresses.subnet(out.domain));
        commands.push(`ip route add ${subnet} via ${addresses.of(hop)} dev ${addresses.nameOf(by)}`);
      }
    }
  }
  return commands;
}

/** The address at which a host is asked for, or sent to: in a network that both are in, else the first declared one. */
export function addressFor(plan: Plan, addresses: Addresses, asked: Device, asking: Device): string | undefined {
  const own = plan.network.interfaces.of(asked);
  const shared = own.find(({ domain }) => plan.network.interfaces.in(asking, domain) !== undefined);
  const at = shared ?? own.find(({ address }) => address !== undefined) ?? own[0];
  return at === undefined ? undefined : addresses.of(at);
}
