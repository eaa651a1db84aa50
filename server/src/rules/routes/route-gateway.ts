import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';
import type { Obstacle } from '../../network/delivery.ts';
import { isOutside } from '../../network/address-uses.ts';
import { receiversLostBy } from '../../network/lost.ts';
import type { Network } from '../../network/network.ts';
import type { RouteEntry } from '../../network/route-table.ts';
import { type Fix, addEntry, fixOf, setValue } from '../../site/edit.ts';
import { placeOf } from '../../site/item.ts';
import { type Device, type Site, type Vlan, portName } from '../../site/model.ts';
import { receiverKeyPath } from '../../site/receiver.ts';
import { formatAddress, isMulticast } from '../../standards/ipv4.ts';
import type { KeyPath } from '../../text/syntax.ts';
import { asName } from '../../text/words.ts';

export const routeGateway: Rule = {
  id: 'route-gateway',
  severity: 'warning',
  summary: "A route's gateway does not exist, or forwards nothing.",
  why: `A host asks on the link for the address of the gateway (ARP). Where nobody has it nothing is sent; a camera or
a screen that has it throws the packets away. A default route without a gateway makes the host ask on the link for each
address of the Internet: on Ethernet nobody answers. Name the address of the router; for multicast alone, write
\`to: 224.0.0.0/4\`.`,
  source: 'RFC 1122 §2.3.2.2 and §3.3.1.1, from memory; measured on Linux 6',
  check({ site, network }: RuleContext, report: Report): void {
    if (site.cables.length === 0) return;
    for (const device of site.devices) {
      if (device.routes.length === 0 || (device.bridging && !device.routing)) continue;
      for (const way of network.interfaces.table(device).declared) {
        const { route, by } = way;
        const problem = route === undefined ? undefined : problemOf(network, device, way);
        if (route === undefined || by === undefined || problem === undefined) continue;
        const lost = receiversLostBy(network, (why) => isBy(why, route));
        const stopped = network.traffic.flatMap(({ obstacle }) =>
          obstacle !== undefined && isBy(obstacle, route) ? [obstacle] : [],
        );
        report({
          at: placeOf(device.item, route.via === undefined ? route.keyPath : [...route.keyPath, 'via']),
          severity: lost.length + stopped.length > 0 || route.via === undefined ? 'error' : 'warning',
          message: problem.message,
          acceptAt: [device.name, portName(by.port)],
          // A consequence of a port in the wrong network, or of a switch that should route, which are reported.
          effects: [problem.of ?? idleGateway(site, by.domain.vlan) ?? by.port],
          entails: [...lost.map(({ unreached }) => unreached), ...stopped],
          related: lost.slice(0, 5).map(({ stream, receiver }) => ({
            at: placeOf(stream.item, receiverKeyPath(stream, receiver)),
            message: `${asName(receiver)} gets nothing of ${asName(stream.name)}`,
          })),
          fixes: problem.fixes,
        });
      }
    }
  },
};

/** The gateway of the VLAN, where it does not route. */
function idleGateway({ deviceByName }: Site, vlan: Vlan | undefined): Device | undefined {
  const device = deviceByName.get(vlan?.gateway ?? '');
  return device?.kind === 'switch' && !device.routing ? device : undefined;
}

function isBy(why: Obstacle, route: RouteEntry['route']): boolean {
  return 'route' in why && why.route === route && why.obstacle !== 'into-nothing';
}

interface Problem {
  readonly message: string;
  /** The cause: a switch that is not declared to route, or an address in the wrong network. */
  readonly of?: object | undefined;
  readonly fixes: () => readonly Fix[];
}

function problemOf(network: Network, device: Device, { by, via, to, route }: RouteEntry): Problem | undefined {
  // A group is sent on the link itself, without the route's gateway.
  if (by === undefined || route === undefined || isMulticast(to.network)) return undefined;
  const name = by.domain.name;
  if (via === undefined && route.via !== undefined)
    return {
      message:
        `${formatAddress(route.via)} is ${asName(device.name)} itself, so it looks for everybody on the link. Name a router of ` +
        `${name}.`,
      fixes: () => handTo(network, device, by, route.keyPath),
    };
  if (via === undefined) {
    if (to.prefix > 0) return undefined;
    return {
      message:
        `The default route of ${asName(device.name)} names no gateway, and ${asName(name)} has none: ${asName(device.name)} looks on the ` +
        'link for every address. Say the router in `via`, or, for multicast alone, write `to: 224.0.0.0/4`.',
      fixes: () => [
        ...routersAt(network, by).flatMap((address) =>
          fixOf(`Hand it to ${address}`, addEntry(device.item, route.keyPath, 'via', address)),
        ),
        ...forMulticast(device, route.keyPath),
      ],
    };
  }
  if (route.via === undefined) return undefined;
  const said = formatAddress(route.via);
  const { at } = via;
  const idle = at === undefined ? switchWith(network, route.via) : undefined;
  const stray = network.addressUses.find((use) => use.address === route.via && isOutside(use, use.vlans));
  const what =
    at === undefined
      ? idle === undefined
        ? `nobody in ${asName(name)} has that address`
        : `that is ${asName(idle.name)}, which does not forward between networks`
      : network.interfaces.forwards(at.device)
        ? undefined
        : `that is ${asName(at.device.name)}, a ${at.device.kind?.replace('-', ' ')}, which forwards nothing`;
  if (what === undefined) return undefined;
  return {
    message: `${asName(device.name)} sends packets to ${said}, and ${what}: they are lost. Name a router of ${asName(name)}.`,
    of: idle ?? stray,
    fixes: () => handTo(network, device, by, route.keyPath),
  };
}

function handTo(network: Network, device: Device, by: NonNullable<RouteEntry['by']>, keyPath: KeyPath): Fix[] {
  return routersAt(network, by).flatMap((address) =>
    fixOf(`Hand it to ${address}`, setValue(device.item, [...keyPath, 'via'], address)),
  );
}

function switchWith({ addressUses }: Network, address: number): Device | undefined {
  return addressUses.find((use) => use.address === address && use.port === undefined && !use.device.routing)?.device;
}

/** Addresses of routers in the network of an interface, as texts. */
function routersAt({ addressUses, interfaces }: Network, by: NonNullable<RouteEntry['by']>): string[] {
  return addressUses
    .filter(({ device, address }) => {
      const own = interfaces.in(device, by.domain);
      return device.routing && device !== by.device && own?.address === address;
    })
    .slice(0, 3)
    .map(({ address }) => formatAddress(address));
}

function forMulticast({ item, routes }: Device, keyPath: KeyPath): Fix[] {
  if (routes.some(({ to }) => to.prefix === 4)) return [];
  return fixOf('Send multicast by it alone', setValue(item, [...keyPath, 'to'], '224.0.0.0/4'));
}

export const examples: readonly Example[] = [
  {
    bad: `
vlans:
  house: {id: 10, subnet: 192.168.10.0/24}
devices:
  core: {kind: switch, ports: {1-4: {vlan: house}}}
  router: {kind: router, address: 192.168.10.1}
  hall-screen: {kind: display, address: 192.168.10.60}
  office-pc: {kind: computer, address: 192.168.10.20, routes: [{to: default, port: eth, via: 192.168.10.254}]}
#                                                                                            ^^^^^^^^^^^^^^ office-pc sends packets to 192.168.10.254, and nobody in house has that address
  study-pc: {kind: computer, address: 192.168.10.21, routes: [{to: default, port: eth, via: 192.168.10.60}]}
#                                                                                           ^^^^^^^^^^^^^ that is hall-screen, a display, which forwards nothing
cables:
  - {from: core/1, to: office-pc}
  - {from: core/2, to: router}
  - {from: core/3, to: hall-screen}
  - {from: core/4, to: study-pc}
`,
    good: `
vlans:
  house: {id: 10, subnet: 192.168.10.0/24}
devices:
  core: {kind: switch, ports: {1-4: {vlan: house}}}
  router: {kind: router, address: 192.168.10.1}
  office-pc: {kind: computer, address: 192.168.10.20, routes: [{to: default, port: eth, via: 192.168.10.1}]}
cables:
  - {from: core/1, to: office-pc}
  - {from: core/2, to: router}
`,
    fixed: `
vlans:
  house: {id: 10, subnet: 192.168.10.0/24}
devices:
  core: {kind: switch, ports: {1-4: {vlan: house}}}
  router: {kind: router, address: 192.168.10.1}
  hall-screen: {kind: display, address: 192.168.10.60}
  office-pc: {kind: computer, address: 192.168.10.20, routes: [{to: default, port: eth, via: 192.168.10.1}]}
  study-pc: {kind: computer, address: 192.168.10.21, routes: [{to: default, port: eth, via: 192.168.10.60}]}
cables:
  - {from: core/1, to: office-pc}
  - {from: core/2, to: router}
  - {from: core/3, to: hall-screen}
  - {from: core/4, to: study-pc}
`,
  },
  {
    bad: `
vlans:
  house: {id: 10, subnet: 192.168.10.0/24}
devices:
  core: {kind: switch, ports: {1-4: {vlan: house}}}
  office-pc: {kind: computer, address: 192.168.10.20, routes: [{to: default, port: eth}]}
#                                                              ^^^^^^^^^^^^^^^^^^^^^^^^ The default route of office-pc names no gateway, and house has none
cables:
  - {from: core/1, to: office-pc}
`,
    fixed: `
vlans:
  house: {id: 10, subnet: 192.168.10.0/24}
devices:
  core: {kind: switch, ports: {1-4: {vlan: house}}}
  office-pc: {kind: computer, address: 192.168.10.20, routes: [{to: 224.0.0.0/4, port: eth}]}
cables:
  - {from: core/1, to: office-pc}
`,
  },
];
