/**
 * Each host and router as a network namespace, with its interfaces, addresses and routes. Everything else is the
 * kernel's default: no routes but those of the site, to a VLAN's gateway, and for multicast by the only card.
 */

import { contains, formatAddress, formatSubnet } from '../../server/src/standards/ipv4.ts';
import type { Interface } from '../../server/src/network/interface.ts';
import { addressedInterface } from '../../server/src/network/unicast.ts';
import type { Plan } from '../../server/src/plan.ts';
import type { Device, HostRoute, Port } from '../../server/src/site/model.ts';
import { type Addresses, interfaceOf } from './addresses.ts';

/** Checksums and tags must stand in the frames, and frames be what the counters see: none joined. */
export function plainFrames(name: string): string {
  return `ethtool -K ${name} tx off rx off tso off gso off gro off txvlan off rxvlan off >/dev/null`;
}

/** The shell commands that make a namespace, which holds its ends of the cables already, this host. */
export function hostCommands(plan: Plan, addresses: Addresses, device: Device): string[] {
  const interfaces = plan.network.interfaces.of(device);
  const commands = cardCommands(plan, addresses, device);
  for (const at of interfaces) {
    commands.push(`ip address add ${addresses.of(at)}/${addresses.prefixOf(at)} dev ${addresses.nameOf(at)}`);
  }
  for (const port of uncabled(plan, device)) {
    for (const { address } of port.addresses) {
      const prefix = plan.site.vlans.find(({ subnet }) => subnet !== undefined && contains(subnet, address))?.subnet
        ?.prefix;
      commands.push(`ip address add ${formatAddress(address)}/${prefix ?? 24} dev ${interfaceOf(port)}`);
    }
  }
  return [...commands, ...routeCommands(plan, addresses, device, interfaces)];
}

/** A host that has only its cards, which are down, with the names that its operating system gives them. */
export function bareCommands(plan: Plan, device: Device): string[] {
  const ports = device.ports.filter(
    (port) => plan.network.topology.linkAt(port) !== undefined || uncabled(plan, device).includes(port),
  );
  return [
    ...settings(plan, device).filter((command) => !command.includes('ip_forward')),
    ...ports.flatMap((port) => [
      plainFrames(interfaceOf(port)),
      `ip link set ${interfaceOf(port)} down name ${port.interface ?? port.name}`,
    ]),
  ];
}

function cardCommands(plan: Plan, addresses: Addresses, device: Device): string[] {
  const commands = settings(plan, device);
  for (const name of legs(plan, device).flatMap((port) => interfacesOf(plan, addresses, port))) {
    commands.push(plainFrames(name), `ip link set ${name} up`);
  }
  return commands;
}

/** Ports of a host without a cable, whose cards exist too. */
export function uncabled(plan: Plan, device: Device): Port[] {
  const { network } = plan;
  if (network.interfaces.of(device).length === 0) return [];
  return legs(plan, device).filter((port) => network.topology.linkAt(port) === undefined);
}

/** The ports by which a host or router sends itself; of one that also switches, that towards its sockets too. */
export function legs({ network }: Plan, device: Device): Port[] {
  const inside = network.topology.inside.filter(({ b }) => b.device === device).map(({ b }) => b);
  return [...device.ports.filter(({ forwards }) => !forwards), ...inside];
}

function settings({ site }: Plan, device: Device): string[] {
  const set = (key: string, value: number): string => `echo ${value} >/proc/sys/net/${key}`;
  return [
    ...['all', 'default'].map((which) => set(`ipv6/conf/${which}/disable_ipv6`, 1)),
    // A moment's load on the machine must not count as a lost packet: nothing is sent again too early.
    set('ipv4/tcp_early_retrans', 0),
    // The made script of a gateway server sets this.
    ...(device.routing || site.vlans.some(({ gateway }) => gateway === device.name) ? [set('ipv4/ip_forward', 1)] : []),
    'ip link set lo up',
  ];
}

/** The names of a port's interfaces at its host: one for frames without a tag, and one to each VLAN of its trunk. */
function interfacesOf(plan: Plan, addresses: Addresses, port: Port): string[] {
  const name = interfaceOf(port);
  if (plan.network.topology.linkAt(port) === undefined) return uncabled(plan, port.device).includes(port) ? [name] : [];
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
  const commands = device.routes.flatMap((route) => routeCommand(plan, addresses, device, route));
  const isDeclared = device.routes.some(({ to }) => !isGroup(to.network));
  if (device.routing && !isDeclared) commands.push(...routerRoutes(plan, addresses, device));
  if (!device.routes.some(({ to }) => to.prefix === 0)) {
    const by = interfaces.find((at) => gatewayOf(plan, addresses, at) !== undefined);
    const via = by === undefined ? undefined : gatewayOf(plan, addresses, by);
    // The kernel may refuse a gateway that is not on the link, as on the host itself.
    if (by !== undefined && via !== undefined)
      commands.push(`ip route add default via ${via} dev ${addresses.nameOf(by)} || true`);
  }
  const [only, ...others] = interfaces;
  // The made script of a host with one card and no default route sets this.
  if (only !== undefined && others.length === 0)
    commands.push(
      `[ -n "$(ip route show default)" ] || ip route add 224.0.0.0/4 dev ${addresses.nameOf(only)} 2>/dev/null || true`,
    );
  return commands;
}

function isGroup(address: number): boolean {
  return address >>> 28 === 14;
}

/** The route as written. The kernel may refuse it; a route for a card's subnet replaces the card's own. */
function routeCommand(plan: Plan, addresses: Addresses, device: Device, route: HostRoute): string[] {
  const port = device.portByName.get(route.port);
  if (port === undefined) return [];
  const own = plan.network.interfaces.of(device).filter((at) => at.port === port);
  const inSubnet = (at: Interface): boolean =>
    route.via !== undefined && contains(addresses.subnet(at.domain), route.via);
  const named = own.find(({ domain }) => domain.vlan?.name === route.vlan);
  const by = route.vlan === undefined ? (own.find(inSubnet) ?? own[0]) : named;
  // A VLAN that the port does not carry has no interface.
  if (by === undefined && own.length > 0) return [];
  const dev = by === undefined ? interfaceOf(port) : addresses.nameOf(by);
  const gateway =
    route.via !== undefined
      ? formatAddress(route.via)
      : route.to.prefix === 0 && by !== undefined
        ? gatewayOf(plan, addresses, by)
        : undefined;
  const to = route.to.prefix === 0 ? 'default' : formatSubnet(route.to);
  const words = `${to}${gateway === undefined ? '' : ` via ${gateway}`} dev ${dev}`;
  return [
    `ip route add ${words} 2>/dev/null || ` +
      `{ [ -z "$(ip route show exact ${to} proto kernel)" ] || ip route replace ${words}; } || true`,
  ];
}

/** The address of the router that a network names as its gateway. */
function gatewayOf(plan: Plan, addresses: Addresses, { device, domain }: Interface): string | undefined {
  const name = domain.vlan?.gateway;
  const gateway = name === undefined ? undefined : plan.site.deviceByName.get(name);
  if (gateway === undefined || gateway === device) return undefined;
  const at = plan.network.interfaces.in(gateway, domain);
  return at === undefined ? undefined : addresses.of(at);
}

/** To each network that a router is not in, by the fewest routers: what is taken of one whose routes are not said. */
function routerRoutes(plan: Plan, addresses: Addresses, router: Device): string[] {
  const routers = plan.site.devices.filter(({ routing }) => routing);
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

/** The address at which a host is asked for, or sent to: what a person would type into the program that asks. */
export function addressFor(plan: Plan, addresses: Addresses, asked: Device, asking: Device): string | undefined {
  const at = addressedInterface(plan.network, asked, asking);
  return at === undefined ? undefined : addresses.of(at);
}
