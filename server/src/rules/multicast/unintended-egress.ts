import { contains, formatSubnet, isMulticast } from '../../standards/ipv4.ts';
import type { Delivery } from '../../network/delivery.ts';
import type { Network } from '../../network/network.ts';
import { betterEgress } from '../../network/better-egress.ts';
import { namePlace, placeOf } from '../../site/item.ts';
import { type HostRoute, type Port, isNamed, portName } from '../../site/model.ts';
import { few, asName } from '../../text/words.ts';
import { sendMulticastBy } from '../../site/multicast-route.ts';
import { grouped } from '../../grouped.ts';
import { isOutside } from '../../network/address-uses.ts';
import type { Example, Finding, Related, Report, Rule, RuleContext } from '../../lint/rule.ts';
import { type Fix, fixOf, nameText, setValue } from '../../site/edit.ts';
import type { Interface } from '../../network/interface.ts';

export const unintendedEgress: Rule = {
  id: 'unintended-egress',
  severity: 'error',
  summary: 'A group leaves its source by the wrong port.',
  why: `A host with several ports sends each packet by its most specific route, and multicast has none until somebody
sets one: it goes where the default route goes, most often into the wrong VLAN. A route for 224.0.0.0/4 by the port in
the receivers' VLAN puts all groups right. Set it on the host as well.`,
  source: 'RFC 1122 §3.3.1.1, from memory',
  check({ site, network }: RuleContext, report: Report): void {
    const leaving: Leaving[] = [];
    const astray: Astray[] = [];
    for (const delivery of network.deliveries) {
      const { stream, source, leaves } = delivery;
      // No route helps a group that is no multicast address: group-not-multicast reports.
      if (source === undefined || leaves === undefined || stream.group === undefined || !isMulticast(stream.group))
        continue;
      const meant = stream.egress === undefined ? undefined : source.portByName.get(stream.egress);
      if (meant !== undefined && !isNamed(leaves.port, meant.name)) {
        astray.push({ delivery, leaves, meant });
        continue;
      }
      // A route into an undeclared VLAN may be the missing one.
      if (refusedFor(network, delivery).some(({ vlan }) => vlan !== undefined && !site.vlanByName.has(vlan))) continue;
      const better = meant === undefined ? betterEgress(site, network, delivery) : undefined;
      if (better !== undefined) leaving.push({ delivery, leaves, ...better });
    }
    // One route corrects all of them.
    for (const [first, ...others] of grouped(astray, byPorts(network)).values())
      if (first !== undefined) report(leavesAstray(network, first, others));
    const alike = grouped(leaving, ({ leaves, by }) => `${portName(leaves.port)} ${portName(by.port)}`);
    for (const [first, ...others] of alike.values())
      if (first !== undefined) report(leavesElsewhere(network, first, others));
  },
};

/** A group that leaves by another port than its `egress`. */
interface Astray {
  readonly delivery: Delivery;
  readonly leaves: Interface;
  readonly meant: Port;
}

/** Groups the astray by actual and intended port, and by whether they reach receivers. */
function byPorts({ interfaces }: Network): (astray: Astray) => string {
  return ({ delivery, leaves, meant }) =>
    [portName(leaves.port), portName(meant), isReaching(delivery), isUsable(interfaces, meant)].join(' ');
}

function isUsable(interfaces: Network['interfaces'], meant: Port): boolean {
  return interfaces.of(meant.device).some(({ port }) => port === meant);
}

function leavesAstray(network: Network, first: Astray, others: readonly Astray[]): Finding {
  const { delivery, leaves, meant } = first;
  const streams = [first, ...others].map((each) => each.delivery.stream);
  const names = few(streams.map(({ name }) => name));
  const [leave, they, reach] = others.length === 0 ? ['leaves', 'it', 'reaches its'] : ['leave', 'they', 'reach their'];
  return {
    at: placeOf(delivery.stream.item, ['egress']),
    message: isUsable(network.interfaces, meant)
      ? `${names} ${leave} by ${portName(leaves.port)}, as ${reason(delivery)}${
          isReaching(delivery)
            ? `, and ${reach} receivers there. Say \`egress: ${leaves.port.name}\`, or send`
            : '. Send'
        } multicast by ${asName(meant.name)}.`
      : `${names} cannot leave by ${portName(meant)}, where no cable that carries a network is; ${they} ${leave} by ` +
        `${portName(leaves.port)}.`,
    acceptAt: [...aboutLeaving(delivery, leaves.port), ...streams.map(({ name }) => name)],
    related: [
      ...related(delivery),
      ...others.map((each) => ({
        at: placeOf(each.delivery.stream.item, ['egress']),
        message: `${asName(each.delivery.stream.name)} leaves there too`,
      })),
    ],
    // By the intended port they would be reached.
    entails: [first, ...others].flatMap((each) => reachedBy(network, each)),
    fixes: () => bothWays(network, [first, ...others], meant),
  };
}

/** The receivers that get nothing, or join in the wrong network, as the group leaves by the wrong port. */
function reachedBy({ interfaces }: Network, { delivery, meant }: Astray): object[] {
  const by = interfaces.of(meant.device).find(({ port }) => port === meant);
  if (by === undefined) return [];
  return delivery.unreached
    .filter(({ why }) =>
      why.obstacle === 'joins-elsewhere'
        ? why.network === by.domain.name
        : (why.obstacle === 'leaves-elsewhere' || why.obstacle === 'other-network') && why.to === by.domain.name,
    )
    .flatMap((unreached) => [unreached, unreached.why]);
}

/** A group that leaves by one port, with receivers in the network of another. */
interface Leaving {
  readonly delivery: Delivery;
  readonly leaves: Interface;
  readonly by: Interface;
  readonly receivers: readonly string[];
}

function leavesElsewhere(network: Network, first: Leaving, others: readonly Leaving[]): Finding {
  const { delivery, leaves, by } = first;
  const { stream } = delivery;
  const all = [first, ...others];
  const streams = all.map((each) => each.delivery.stream.name);
  const receivers = [...new Set(all.flatMap((each) => each.receivers))];
  return {
    at: placeOf(stream.item, ['source']),
    message:
      `${few(streams)} ${streams.length === 1 ? 'leaves' : 'leave'} ${portName(leaves.port)} into ` +
      `${asName(leaves.domain.name)}, but ${few(receivers)} ${receivers.length === 1 ? 'is' : 'are'} in ${asName(by.domain.name)}, ` +
      (by.port === leaves.port
        ? `which that port carries too: ${whySent(delivery)}. Send multicast into ${asName(by.domain.name)}.`
        : `as is ${portName(by.port)}: ${whySent(delivery)}. Send multicast by ${asName(by.port.name)}.`),
    acceptAt: [...aboutLeaving(delivery, leaves.port), ...streams],
    related: [
      ...related(delivery),
      ...others.map((each) => ({
        at: placeOf(each.delivery.stream.item, ['source']),
        message: `${asName(each.delivery.stream.name)} leaves there too`,
      })),
    ],
    // A consequence of addresses of another network at its port, or of a refused route, which are reported.
    effects: [
      ...network.addressUses.filter((use) => use.port === leaves.port && isOutside(use, use.vlans)),
      ...all.flatMap((each) => refusedFor(network, each.delivery)),
    ],
    entails: all.flatMap((each) => each.delivery.unreached),
    fixes: () => routeBy(network, delivery, by),
  };
}

/** Routes of its source for the group that the kernel does not accept. */
function refusedFor({ interfaces }: Network, { stream, source }: Delivery): HostRoute[] {
  const { group } = stream;
  if (source === undefined || group === undefined) return [];
  return interfaces
    .table(source)
    .refused.filter(({ route, why }) => why !== 'second' && contains(route.to, group))
    .map(({ route }) => route);
}

function aboutLeaving({ stream, source }: Delivery, port: Port): string[] {
  return [stream.name, portName(port), ...(source === undefined ? [] : [source.name])];
}

/** Whether it reaches anybody by the port that it leaves by now. */
function isReaching({ reaches, source }: Delivery): boolean {
  return reaches.some((name) => name !== source?.name);
}

/** Corrects the route or `egress`: first the one that keeps the reached receivers. */
function bothWays(network: Network, astray: readonly Astray[], meant: Port): Fix[] {
  const [first] = astray;
  if (first === undefined) return [];
  const { delivery, leaves } = first;
  const { stream } = delivery;
  const by = network.interfaces.of(meant.device).find(({ port }) => port === meant);
  const route = by === undefined ? [] : routeBy(network, delivery, by);
  const { name } = leaves.port;
  // Where that port reaches nobody, changing `egress` would only hide the mistake.
  if (stream.receivers.length > 0 && !isReaching(delivery)) return route;
  const say = fixOf(
    `Say that ${astray.length === 1 ? 'it leaves' : 'they leave'} by ${asName(name)}`,
    ...astray.map((each) => setValue(each.delivery.stream.item, ['egress'], nameText(name))),
  );
  return isReaching(delivery) ? [...say, ...route] : [...route, ...say];
}

/** Adds a route for all multicast; for the group alone where others rightly leave by the present port. */
function routeBy({ deliveries, interfaces }: Network, delivery: Delivery, by: Interface): Fix[] {
  const { source, leaves, stream } = delivery;
  if (source === undefined || leaves === undefined) return [];
  const goesOn = deliveries.some(
    (other) =>
      other.source === source &&
      other.stream.group !== undefined &&
      other.stream.group !== stream.group &&
      other.leaves?.port === leaves.port &&
      (other.stream.egress === leaves.port.name ||
        (other.stream.egress === undefined && other.reaches.some((name) => name !== source.name))),
  );
  return sendMulticastBy(source, interfaces.target(by), delivery.route, goesOn ? stream.group : undefined);
}

function whySent(delivery: Delivery): string {
  return delivery.route === undefined ? reason(delivery) : `${routeWords(delivery.route)} sends it there`;
}

function reason({ source, route }: Delivery): string {
  return route === undefined
    ? `${source?.name} has no route for its group but the default one`
    : `${routeWords(route)} says`;
}

function routeWords({ to }: NonNullable<Delivery['route']>): string {
  return `the ${to.prefix === 0 ? 'default route' : `route for ${formatSubnet(to)}`}`;
}

function related({ source, route }: Delivery): Related[] {
  if (source === undefined) return [];
  if (route === undefined)
    return [{ at: namePlace(source.item), message: `no route of ${asName(source.name)} is for groups` }];
  return [{ at: placeOf(source.item, route.keyPath), message: 'the route that decides' }];
}

export const examples: readonly Example[] = [
  {
    bad: `
vlans:
  house: {id: 10, gateway: router}
  video: {id: 20, querier: core}
devices:
  core: {kind: switch, igmp-snooping: true, ports: {1: {vlan: house}, 2: {vlan: video}, 3: {vlan: video}, 4: {vlan: house}}}
  router: {kind: router}
  recorder: {kind: server, ports: {lan: {}, cams: {}}}
  stable-screen: {kind: display}
cables:
  - {from: core/1, to: recorder/lan}
  - {from: core/2, to: recorder/cams}
  - {from: core/3, to: stable-screen}
  - {from: core/4, to: router}
streams:
  paddock-live: {source: recorder, transport: rtp, group: 239.192.20.31, port: 5004, receivers: [stable-screen]}
#                        ^^^^^^^^ paddock-live leaves recorder/lan into house, but stable-screen is in video, as is recorder/cams
`,
    fixed: `
vlans:
  house: {id: 10, gateway: router}
  video: {id: 20, querier: core}
devices:
  core: {kind: switch, igmp-snooping: true, ports: {1: {vlan: house}, 2: {vlan: video}, 3: {vlan: video}, 4: {vlan: house}}}
  router: {kind: router}
  recorder: {kind: server, ports: {lan: {}, cams: {}}, routes: [{to: 224.0.0.0/4, port: cams}]}
  stable-screen: {kind: display}
cables:
  - {from: core/1, to: recorder/lan}
  - {from: core/2, to: recorder/cams}
  - {from: core/3, to: stable-screen}
  - {from: core/4, to: router}
streams:
  paddock-live: {source: recorder, transport: rtp, group: 239.192.20.31, port: 5004, receivers: [stable-screen]}
`,
  },
  {
    bad: `
vlans:
  video: {id: 20}
devices:
  core: {kind: switch, ports: {1: {vlan: video}, 2: {vlan: video}}}
  recorder:
    kind: server
    ports: {lan: {}, cams: {}}
    routes:
      - {to: 239.0.0.0/8, port: lan}
cables:
  - {from: core/1, to: recorder/lan}
  - {from: core/2, to: recorder/cams}
streams:
  paddock-live: {source: recorder, transport: rtp, group: 239.192.20.31, port: 5004, egress: cams}
#                                                                                            ^^^^ paddock-live leaves by recorder/lan
`,
    fixed: `
vlans:
  video: {id: 20}
devices:
  core: {kind: switch, ports: {1: {vlan: video}, 2: {vlan: video}}}
  recorder:
    kind: server
    ports: {lan: {}, cams: {}}
    routes:
      - {to: 239.0.0.0/8, port: cams}
cables:
  - {from: core/1, to: recorder/lan}
  - {from: core/2, to: recorder/cams}
streams:
  paddock-live: {source: recorder, transport: rtp, group: 239.192.20.31, port: 5004, egress: cams}
`,
  },
];
