import type { Example, Finding, Report, Rule, RuleContext } from '../../lint/rule.ts';
import type { Interface } from '../../network/interface.ts';
import type { Obstacle } from '../../network/delivery.ts';
import { oppositePort } from '../../network/link.ts';
import type { Network } from '../../network/network.ts';
import { type Fix, fixOf, nameText, putElement } from '../../site/edit.ts';
import { namePlace, placeOf } from '../../site/item.ts';
import type { Device, Vlan } from '../../site/model.ts';
import { type Subnet, contains, formatAddress, formatSubnet } from '../../standards/ipv4.ts';
import { few, list, asName } from '../../text/words.ts';

export const routeMissing: Rule = {
  id: 'route-missing',
  severity: 'error',
  summary: 'A router, or a switch that routes, has no route to the networks behind the other.',
  why: `A switch that routes translates no addresses, so what comes back from the Internet is for the subnets behind it.
The router knows those of its own ports alone: without a route it sends the answers out to the provider, where they are
lost. The switch in turn needs a default route by way of the router. Give each its route, here and in its settings.`,
  source: 'RFC 1812 §5.2.4.3 (the most specific route, else the default), from memory',
  check({ site, network }: RuleContext, report: Report): void {
    for (const device of site.devices) {
      if (device.kind !== 'switch' || !device.routing) continue;
      const finding = withoutDefault(network, device) ?? withoutWayBack(site.vlans, network, device);
      if (finding !== undefined) report(finding);
    }
  },
};

/** A finding for a switch that the router forwards to and that has no default route. */
function withoutDefault(network: Network, device: Device): Finding | undefined {
  const { interfaces } = network;
  const table = interfaces.table(device);
  if (table.usualDefault !== undefined || device.routes.some(({ to }) => to.prefix === 0)) return undefined;
  for (const own of interfaces.of(device)) {
    for (const router of network.routers) {
      const at = router === device ? undefined : interfaces.in(router, own.domain);
      const hands = interfaces.table(router).declared.some(({ via }) => via?.at?.device === device);
      if (router.kind !== 'router' || at?.address === undefined || !hands) continue;
      const via = formatAddress(at.address);
      return {
        at: namePlace(device.item),
        message:
          `${asName(device.name)} has no default route, so nothing behind it gets out by ${asName(router.name)}, though ${asName(router.name)} ` +
          `has a route back. Give it one by way of ${via}.`,
        acceptAt: [device.name, router.name],
        related: [{ at: namePlace(router.item), message: `${asName(router.name)} is ${via}` }],
        ...following(
          network,
          ({ obstacle, ...why }) => obstacle === 'no-route' && Object.values(why).includes(device.name),
        ),
        fixes: () => defaultBy(device, at, via),
      };
    }
  }
  return undefined;
}

function defaultBy(device: Device, { port: near, link, domain }: Interface, via: string): Fix[] {
  const port = oppositePort(link, near);
  if (port.device !== device) return [];
  const into = port.trunk === undefined ? '' : `, vlan: ${nameText(domain.name)}`;
  return fixOf(
    `Give ${asName(device.name)} a default route by way of ${via}`,
    putElement(device.item, 'routes', `{to: default, port: ${nameText(port.name)}${into}, via: ${via}}`),
  );
}

/** A finding for a router that has no route back to the networks behind the switch. */
function withoutWayBack(vlans: readonly Vlan[], network: Network, device: Device): Finding | undefined {
  const { interfaces } = network;
  const table = interfaces.table(device);
  const way = table.declared.find(({ to }) => to.prefix === 0) ?? table.usualDefault;
  const router = way?.via?.at;
  const own = way?.by;
  if (router === undefined || own?.address === undefined || router.device.kind !== 'router') return undefined;
  const lost = interfaces.of(device).flatMap(({ domain }): readonly (Vlan & { readonly subnet: Subnet })[] => {
    const { vlan } = domain;
    if (vlan?.subnet === undefined || vlan.gateway !== device.name || !vlan.internet) return [];
    const { subnet } = vlan;
    return knows(network, router.device, subnet, domain) ? [] : [{ ...vlan, subnet }];
  });
  if (lost.length === 0) return undefined;
  const names = lost.map(({ name }) => name);
  const via = formatAddress(own.address);
  return {
    at: namePlace(router.device.item),
    message:
      `${asName(router.device.name)} has no route to ${few(lost.map(({ name, subnet }) => `${formatSubnet(subnet)} of ${asName(name)}`))}: ` +
      `what ${asName(device.name)} hands to it from there is never answered. Give it ` +
      `${lost.length === 1 ? 'one' : 'them'} by way of ${via}, which is ${asName(device.name)}.`,
    acceptAt: [router.device.name, device.name, ...names],
    related: [
      {
        at: way?.route === undefined ? namePlace(device.item) : placeOf(device.item, way.route.keyPath),
        message: `${asName(device.name)} hands what is for others to ${asName(router.device.name)}`,
      },
      ...vlans
        .filter(({ name }) => names.includes(name))
        .map((vlan) => ({
          at: placeOf(vlan.item, ['subnet']),
          message: `the subnet of ${asName(vlan.name)}`,
        })),
    ],
    ...following(network, (why) => why.obstacle === 'no-route' && why.gateway === router.device.name),
    fixes: () =>
      routes(
        network,
        router.device,
        router,
        via,
        lost.map(({ subnet }) => formatSubnet(subnet)),
      ),
  };
}

/** Whether the router knows the subnet: by a port of its own or a route, even one that is reported as wrong. */
function knows({ interfaces }: Network, router: Device, subnet: Subnet, domain: Interface['domain']): boolean {
  if (interfaces.in(router, domain) !== undefined) return true;
  const { refused } = interfaces.table(router);
  if (refused.some(({ route }) => route.to.prefix > 0 && contains(route.to, subnet.network + 1))) return true;
  const way = interfaces.table(router).towards({ address: subnet.network + 1, domain: undefined });
  return way !== undefined && (way.to.prefix > 0 || way.via?.at?.device.kind === 'switch');
}

/** The deliveries that fail for that reason. */
function following(network: Network, isWhy: (why: Obstacle) => boolean): Pick<Finding, 'entails'> {
  const stopped = [
    ...network.deliveries.flatMap(({ unreached }) => unreached.map(({ why }) => why)),
    ...network.traffic.flatMap(({ obstacle }) => (obstacle === undefined ? [] : [obstacle])),
  ];
  return { entails: stopped.filter(isWhy) };
}

function routes({ interfaces }: Network, device: Device, by: Interface, via: string, to: readonly string[]): Fix[] {
  const { port, vlan } = interfaces.target(by);
  const into = vlan === undefined ? '' : `, vlan: ${nameText(vlan)}`;
  // Several routes are added only as a new list, not to an existing one.
  if (to.length > 1 && device.routes.length > 0) return [];
  const element = (one: string): string => `{to: ${one}, port: ${nameText(port)}${into}, via: ${via}}`;
  return fixOf(
    `Give ${asName(device.name)} ${to.length === 1 ? 'the route' : 'routes'} for ${list(to)}`,
    putElement(device.item, 'routes', to.map(element).join(', ')),
  );
}

export const examples: readonly Example[] = [
  {
    bad: `
vlans:
  video: {id: 20, subnet: 192.168.20.0/24, gateway: core}
  transit: {id: 99, subnet: 192.168.99.0/30}
devices:
  core:
    kind: switch
    routing: true
    addresses: {video: 192.168.20.1, transit: 192.168.99.2}
    routes: [{to: default, port: 8, via: 192.168.99.1}]
    ports: {1-4: {vlan: video}, 8: {vlan: transit}}
  router: {kind: router, address: 192.168.99.1}
# ^^^^^^ router has no route to 192.168.20.0/24 of video: what core hands to it from there is never answered. Give it one by way of 192.168.99.2
  recorder: {kind: server, address: 192.168.20.5}
cables:
  - {from: core/8, to: router}
  - {from: core/1, to: recorder}
`,
    fixed: `
vlans:
  video: {id: 20, subnet: 192.168.20.0/24, gateway: core}
  transit: {id: 99, subnet: 192.168.99.0/30}
devices:
  core:
    kind: switch
    routing: true
    addresses: {video: 192.168.20.1, transit: 192.168.99.2}
    routes: [{to: default, port: 8, via: 192.168.99.1}]
    ports: {1-4: {vlan: video}, 8: {vlan: transit}}
  router: {kind: router, address: 192.168.99.1, routes: [{to: 192.168.20.0/24, port: eth, via: 192.168.99.2}]}
  recorder: {kind: server, address: 192.168.20.5}
cables:
  - {from: core/8, to: router}
  - {from: core/1, to: recorder}
`,
  },
  {
    bad: `
vlans:
  video: {id: 20, subnet: 192.168.20.0/24, gateway: core}
  transit: {id: 99, subnet: 192.168.99.0/30}
devices:
  core:
# ^^^^ core has no default route, so nothing behind it gets out by router
    kind: switch
    routing: true
    addresses: {video: 192.168.20.1, transit: 192.168.99.2}
    ports: {1-4: {vlan: video}, 8: {vlan: transit}}
  router: {kind: router, address: 192.168.99.1, routes: [{to: 192.168.20.0/24, port: eth, via: 192.168.99.2}]}
  recorder: {kind: server, address: 192.168.20.5}
cables:
  - {from: core/8, to: router}
  - {from: core/1, to: recorder}
`,
    good: `
vlans:
  video: {id: 20, subnet: 192.168.20.0/24, gateway: core}
  transit: {id: 99, subnet: 192.168.99.0/30}
devices:
  core:
    kind: switch
    routing: true
    addresses: {video: 192.168.20.1, transit: 192.168.99.2}
    routes: [{to: default, port: 8, via: 192.168.99.1}]
    ports: {1-4: {vlan: video}, 8: {vlan: transit}}
  router: {kind: router, address: 192.168.99.1, routes: [{to: 192.168.20.0/24, port: eth, via: 192.168.99.2}]}
  recorder: {kind: server, address: 192.168.20.5}
cables:
  - {from: core/8, to: router}
  - {from: core/1, to: recorder}
`,
    fixed: `
vlans:
  video: {id: 20, subnet: 192.168.20.0/24, gateway: core}
  transit: {id: 99, subnet: 192.168.99.0/30}
devices:
  core:
    kind: switch
    routing: true
    addresses: {video: 192.168.20.1, transit: 192.168.99.2}
    ports: {1-4: {vlan: video}, 8: {vlan: transit}}
    routes: [{to: default, port: 8, via: 192.168.99.1}]
  router: {kind: router, address: 192.168.99.1, routes: [{to: 192.168.20.0/24, port: eth, via: 192.168.99.2}]}
  recorder: {kind: server, address: 192.168.20.5}
cables:
  - {from: core/8, to: router}
  - {from: core/1, to: recorder}
`,
  },
];
