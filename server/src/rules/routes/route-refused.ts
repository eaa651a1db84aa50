import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';
import type { Network } from '../../network/network.ts';
import type { RefusedRoute } from '../../network/route-table.ts';
import { type Fix, fixOf, remove } from '../../site/edit.ts';
import { placeOf } from '../../site/item.ts';
import { type Device, type HostRoute, portName } from '../../site/model.ts';
import { formatAddress, formatSubnet } from '../../standards/ipv4.ts';
import { list, asName } from '../../text/words.ts';

export const routeRefused: Rule = {
  id: 'route-refused',
  severity: 'error',
  showAfter: 'item',
  summary: 'Linux rejects a route.',
  why: `Of two routes for one destination the kernel accepts only the first ("File exists"), so which of two default routes
counts depends on which is set first. A gateway must have an address in a subnet of the port ("Nexthop has invalid
gateway"): packets are handed to it on that link. And a port sends tagged frames only into VLANs of its trunk.`,
  source: 'Measured on Linux 6 (ip route add); RFC 1122 §3.3.1.2 (a gateway is on a connected network), from memory',
  check({ site, network }: RuleContext, report: Report): void {
    for (const device of site.devices) {
      if (device.routes.length < 1 || (device.bridging && !device.routing)) continue;
      for (const refused of network.interfaces.table(device).refused) {
        const { route } = refused;
        const port = device.portByName.get(route.port);
        // An unknown port or VLAN is reported as such.
        if (port === undefined) continue;
        if (route.vlan !== undefined && !site.vlanByName.has(route.vlan)) continue;
        report({
          at: placeOf(device.item, [...route.keyPath, KEYS[refused.why]]),
          message: messageOf(network, device, refused),
          acceptAt: [device.name, portName(port)],
          // A consequence of a port in the wrong network, or without the VLAN of its address, which is reported.
          effects: refused.why === 'no-vlan' ? [route] : refused.why === 'off-link' ? [port] : [],
          entails: [route, ...(refused.why === 'off-link' ? missingTo(network, device) : [])],
          ...(refused.why === 'second' && {
            related: [{ at: placeOf(device.item, refused.first.keyPath), message: 'the first one' }],
          }),
          fixes: () => fixesFor(network, device, refused),
        });
      }
    }
  },
};

/** The deliveries from the device, and its answers, that fail as its route is refused. */
function missingTo({ deliveries, traffic }: Network, device: Device): object[] {
  const streams = deliveries.flatMap(({ source, unreached }) =>
    unreached.flatMap((one) => (source === device || one.receiver === device.name ? [one.why] : [])),
  );
  const others = traffic.flatMap(({ from, to, obstacle }) =>
    obstacle !== undefined && (from === device || to === device) ? [obstacle] : [],
  );
  const beyond = [
    ...deliveries.flatMap(({ unreached }) => unreached.map(({ why }) => why)),
    ...traffic.flatMap(({ obstacle }) => obstacle ?? []),
  ].filter((why) => why.obstacle === 'no-route' && why.gateway === device.name);
  return [...[...streams, ...others].filter(({ obstacle }) => obstacle === 'no-gateway'), ...beyond];
}

const KEYS = { 'no-port': 'port', 'no-vlan': 'vlan', 'off-link': 'via', 'second': 'to' } as const;

function messageOf({ interfaces }: Network, { name, portByName }: Device, refused: RefusedRoute): string {
  const { route } = refused;
  const port = `${name}/${route.port}`;
  switch (refused.why) {
    case 'second':
      return (
        `${asName(name)} has ${route.to.prefix === 0 ? 'a default route' : `a route for ${formatSubnet(route.to)}`} by ` +
        `${refused.first.port} already: Linux accepts only one. Keep the one that you mean.`
      );
    case 'no-vlan':
      return `${port} does not carry ${route.vlan ?? ''}, so the route leads nowhere. Name a VLAN of the port.`;
    default: {
      const device = portByName.get(route.port)?.device;
      const subnets = (device === undefined ? [] : interfaces.of(device)).flatMap(({ port: at, domain }) =>
        at.name === route.port && domain.vlan?.subnet !== undefined ? [formatSubnet(domain.vlan.subnet)] : [],
      );
      const where = subnets.length === 0 ? 'which has no address' : `which is in ${list(subnets)}`;
      return (
        `${route.via === undefined ? 'The gateway' : formatAddress(route.via)} is in no subnet of ${port}, ${where}: ` +
        'Linux refuses the route. Name a router that is on that link.'
      );
    }
  }
}

function fixesFor({ topology }: Network, { item, portByName }: Device, refused: RefusedRoute): Fix[] {
  if (refused.why !== 'second') return [];
  const hasCable = ({ port }: HostRoute): boolean => {
    const own = portByName.get(port);
    return own !== undefined && topology.linkAt(own) !== undefined;
  };
  const both = [refused.first, refused.route];
  // A route by a port without a cable is removed rather than one that carries traffic.
  const kept = both.some(hasCable) ? both.filter(hasCable) : both;
  return kept.flatMap((route) =>
    fixOf(
      `Keep the route by ${route.port}`,
      ...both.filter((other) => other !== route).map((other) => remove(item, other.keyPath)),
    ),
  );
}

export const examples: readonly Example[] = [
  {
    bad: `
vlans:
  house: {id: 10, subnet: 192.168.10.0/24, gateway: router}
  video: {id: 20, subnet: 192.168.20.0/24, gateway: router}
devices:
  core: {kind: switch, ports: {1: {vlan: house}, 2: {vlan: video}, 3: {trunk: [house, video]}}}
  router: {kind: router, ports: {lan: {trunk: [house, video], addresses: {house: 192.168.10.1, video: 192.168.20.1}}}}
  recorder:
    kind: server
    ports: {lan: {address: 192.168.10.5}, cams: {address: 192.168.20.5}}
    routes:
      - {to: default, port: lan, via: 192.168.10.1}
      - {to: default, port: cams, via: 192.168.20.1}
#            ^^^^^^^ recorder has a default route by lan already
cables:
  - {from: core/1, to: recorder/lan}
  - {from: core/2, to: recorder/cams}
  - {from: core/3, to: router}
`,
    fixed: `
vlans:
  house: {id: 10, subnet: 192.168.10.0/24, gateway: router}
  video: {id: 20, subnet: 192.168.20.0/24, gateway: router}
devices:
  core: {kind: switch, ports: {1: {vlan: house}, 2: {vlan: video}, 3: {trunk: [house, video]}}}
  router: {kind: router, ports: {lan: {trunk: [house, video], addresses: {house: 192.168.10.1, video: 192.168.20.1}}}}
  recorder:
    kind: server
    ports: {lan: {address: 192.168.10.5}, cams: {address: 192.168.20.5}}
    routes:
      - {to: default, port: lan, via: 192.168.10.1}
cables:
  - {from: core/1, to: recorder/lan}
  - {from: core/2, to: recorder/cams}
  - {from: core/3, to: router}
`,
  },
  {
    bad: `
vlans:
  house: {id: 10, subnet: 192.168.10.0/24}
devices:
  core: {kind: switch, ports: {1-2: {vlan: house}}}
  router: {kind: router, address: 192.168.10.1}
  office-pc: {kind: computer, address: 192.168.10.20, routes: [{to: default, port: eth, via: 192.168.1.1}]}
#                                                                                            ^^^^^^^^^^^ 192.168.1.1 is in no subnet of office-pc/eth, which is in 192.168.10.0/24
cables:
  - {from: core/1, to: office-pc}
  - {from: core/2, to: router}
`,
    good: `
vlans:
  house: {id: 10, subnet: 192.168.10.0/24}
devices:
  core: {kind: switch, ports: {1-2: {vlan: house}}}
  router: {kind: router, address: 192.168.10.1}
  office-pc: {kind: computer, address: 192.168.10.20, routes: [{to: default, port: eth, via: 192.168.10.1}]}
cables:
  - {from: core/1, to: office-pc}
  - {from: core/2, to: router}
`,
  },
  {
    bad: `
vlans:
  house: {id: 10, subnet: 192.168.10.0/24}
  video: {id: 20, subnet: 192.168.20.0/24}
  guests: {id: 30, subnet: 192.168.30.0/24}
devices:
  core: {kind: switch, ports: {1: {trunk: [house, video]}}}
  recorder:
    kind: server
    ports: {lan: {trunk: [house, video], addresses: {house: 192.168.10.5, video: 192.168.20.5}}}
    routes: [{to: 224.0.0.0/4, port: lan, vlan: guests}]
#                                               ^^^^^^ recorder/lan does not carry guests
cables:
  - {from: core/1, to: recorder/lan}
`,
    good: `
vlans:
  house: {id: 10, subnet: 192.168.10.0/24}
  video: {id: 20, subnet: 192.168.20.0/24}
devices:
  core: {kind: switch, ports: {1: {trunk: [house, video]}}}
  recorder:
    kind: server
    ports: {lan: {trunk: [house, video], addresses: {house: 192.168.10.5, video: 192.168.20.5}}}
    routes: [{to: 224.0.0.0/4, port: lan, vlan: video}]
cables:
  - {from: core/1, to: recorder/lan}
`,
  },
];
