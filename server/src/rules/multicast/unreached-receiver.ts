/** Receivers that a stream does not reach. Long by its examples, one for each kind of obstacle. */

import { isMulticast } from '../../standards/ipv4.ts';
import type { Gap } from '../../network/causes.ts';
import type { Delivery, Obstacle, Unreached } from '../../network/delivery.ts';
import type { Network } from '../../network/network.ts';
import { obstacleWords } from '../../network/obstacle-words.ts';
import { type Fix, fixOf, nameText, putValue } from '../../site/edit.ts';
import { type Place, namePlace, placeOf } from '../../site/item.ts';
import type { Device, Site, Vlan } from '../../site/model.ts';
import { receiverKeyPath } from '../../site/receiver.ts';
import { count, few, asName } from '../../text/words.ts';
import { grouped } from '../../grouped.ts';
import { sendMulticastBy } from '../../site/multicast-route.ts';
import {
  type Example,
  type Finding,
  MOST_RELATED,
  type Related,
  type Report,
  type Rule,
  type RuleContext,
} from '../../lint/rule.ts';
import { betterEgress } from '../../network/better-egress.ts';

export const unreachedReceiver: Rule = {
  id: 'unreached-receiver',
  severity: 'error',
  summary: 'A receiver does not get a stream.',
  why: `The stream does not get there, whatever is played or recorded: there is no cable, no way between the VLANs, or
something on the way does not pass it on. The message says which, and what to do.`,
  source: 'What switches pass on: RFC 4541 §2.1.2, read. Routers: RFC 1812 §5.2, from memory',
  check(context: RuleContext, report: Report): void {
    // Before the first cable is written, no path is known.
    if (context.site.cables.length === 0) return;
    for (const alike of grouped(missesIn(context), ({ key }) => key).values()) {
      const [first] = alike;
      if (first !== undefined) report({ at: placeOfMiss(first), word: () => findingOf(context, alike, first) });
    }
  },
};

/** A receiver that gets nothing of a stream. */
interface Miss {
  readonly delivery: Delivery;
  readonly unreached: Unreached;
  readonly gap: Gap | undefined;
  /** Equal for misses that one correction ends. */
  readonly key: string;
}

/** The misses that no other rule reports. */
function missesIn({ site, network }: RuleContext): Miss[] {
  const found: Miss[] = [];
  for (const delivery of network.deliveries) {
    const { stream, leaves, unreached: all } = delivery;
    if (all.length === 0 || (stream.group !== undefined && !isMulticast(stream.group))) continue;
    // unintended-egress reports nothing where it leaves by the intended port.
    const asMeant = stream.egress !== undefined && stream.egress === leaves?.port.name;
    const better = asMeant ? undefined : betterEgress(site, network, delivery);
    for (const unreached of all) {
      const { receiver, why } = unreached;
      if (isReportedElsewhere(site, why) || better?.receivers.includes(receiver) === true) continue;
      const explained = network.causes.explains(unreached) ? 'explained' : 'unexplained';
      const gap = isUncabled(why) ? undefined : network.causes.gapBefore(unreached);
      const key = gap === undefined ? keyOf(delivery, unreached) : `gap ${gap.from.name} ${gap.to.name}`;
      found.push({ delivery, unreached, gap, key: `${explained} ${key}` });
    }
  }
  return found;
}

function isUncabled({ obstacle }: Obstacle): boolean {
  return obstacle === 'source-not-cabled' || obstacle === 'receiver-not-cabled' || obstacle === 'not-a-host';
}

function keyOf({ stream }: Delivery, { receiver, why }: Unreached): string {
  switch (why.obstacle) {
    case 'source-not-cabled':
      return `cable ${why.device}`;
    case 'receiver-not-cabled':
      return `cable ${receiver}`;
    case 'not-a-host':
      return `no host ${asName(receiver)}`;
    case 'apart':
      return `apart ${why.network}`;
    case 'link-local':
      return `link-local ${asName(stream.name)}`;
    case 'joins-elsewhere':
      return `${receiver} ${JSON.stringify(why)}`;
    default:
      return JSON.stringify(why);
  }
}

function placeOfMiss({ delivery: { stream, source }, unreached: { receiver, why } }: Miss): Place {
  const isOfSource = why.obstacle === 'source-not-cabled' && source !== undefined;
  return placeOf(stream.item, isOfSource ? ['source'] : receiverKeyPath(stream, receiver));
}

function findingOf({ site, network }: RuleContext, alike: readonly Miss[], first: Miss): Finding {
  const { delivery, unreached } = first;
  const { stream, source } = delivery;
  const { receiver, why } = unreached;
  const shared = {
    acceptAt: [...new Set(alike.flatMap((miss) => [miss.unreached.receiver, miss.delivery.stream.name]))],
    effects: alike.map((miss) => miss.unreached.why),
    entails: [
      ...alike.map((miss) => miss.unreached),
      ...(first.gap === undefined ? [] : network.causes.entailedBy(first.gap)),
      ...(isUncabled(why) ? trafficOf(network, why.obstacle === 'source-not-cabled' ? why.device : receiver) : []),
    ],
  };
  const others = alike.slice(1, 1 + MOST_RELATED).map((miss) => ({
    at: placeOf(miss.delivery.stream.item, receiverKeyPath(miss.delivery.stream, miss.unreached.receiver)),
    message: `${miss.unreached.receiver} gets nothing of ${asName(miss.delivery.stream.name)}`,
  }));
  if (why.obstacle === 'source-not-cabled' && source !== undefined) {
    const names = [
      ...new Set(
        alike
          .filter((miss) => miss.unreached.why === why || miss.delivery.source === source)
          .map((miss) => miss.delivery.stream.name),
      ),
    ];
    const todo = isHost(source)
      ? `no cable that carries a network is at ${asName(source.name)}. Cable it.`
      : `${asName(source.name)} only passes frames or plugs on. Name the device that sends ${names.length === 1 ? 'it' : 'them'}.`;
    return {
      ...shared,
      at: placeOfMiss(first),
      message: `${few(names)} ${names.length === 1 ? 'reaches' : 'reach'} nobody: ${todo}`,
      acceptAt: [stream.name, source.name, ...shared.acceptAt],
      related: others,
    };
  }
  return {
    ...shared,
    at: placeOfMiss(first),
    message: messageOf(alike, first),
    related: [...related(site, why, receiver), ...others],
    fixes: () => fixesFor({ site, network }, delivery, receiver, why),
  };
}

/** The obstacles to other traffic of a device without a cable. */
function trafficOf({ traffic }: Network, uncabled: string): Obstacle[] {
  return traffic.flatMap(({ from, to, obstacle }) =>
    obstacle !== undefined && isUncabled(obstacle) && (from?.name === uncabled || to?.name === uncabled)
      ? [obstacle]
      : [],
  );
}

function isHost({ bridging, routing, kind }: Device): boolean {
  return (!bridging || routing) && kind !== 'patch-panel';
}

/**
 * By ttl-too-small, no-multicast-route, route-without-carrier, route-gateway or gateway-without-address; by no-querier
 * or querier-absent only where a VLAN is declared.
 */
function isReportedElsewhere(site: Site, why: Obstacle): boolean {
  switch (why.obstacle) {
    case 'ttl':
    case 'no-group-route':
    case 'no-such-gateway':
    case 'no-router':
      return true;
    case 'into-nothing':
      return why.route !== undefined;
    case 'not-on-link':
      return why.route?.to.prefix === 0;
    default:
  }
  return (why.obstacle === 'report-stays' || why.obstacle === 'known-nearer') && site.vlanByName.has(why.network);
}

function messageOf(alike: readonly Miss[], { delivery: { stream }, unreached: { receiver, why }, gap }: Miss): string {
  const { what, remedy } = gap === undefined ? obstacleWords(why, receiver, stream) : gapWords(gap);
  // With another route the receivers that it reaches now would lose it.
  const todo =
    gap === undefined && why.obstacle === 'leaves-elsewhere'
      ? `send another stream into ${asName(why.to)}, or let a router route multicast`
      : remedy;
  return (
    `${asName(receiver)} gets nothing of ${asName(stream.name)}${others(alike, receiver)}: ${what}. ` +
    `${todo.charAt(0).toUpperCase()}${todo.slice(1)}.`
  );
}

function gapWords({ from, to }: Gap): ReturnType<typeof obstacleWords> {
  return { what: `no cable leads from ${asName(from.name)} to ${asName(to.name)}`, remedy: 'cable them together' };
}

/** Words for the other receivers and streams behind the first. */
function others(alike: readonly Miss[], receiver: string): string {
  const more = alike.slice(1);
  if (more.length === 0) return '';
  if (more.every((miss) => miss.unreached.receiver === receiver))
    return ` and of ${count(more.length, 'other stream')}`;
  return `, nor ${few(more.map((miss) => `${miss.unreached.receiver} of ${asName(miss.delivery.stream.name)}`))}`;
}

function related(site: Site, why: Obstacle, receiver: string): Related[] {
  const at = (device: Device | undefined, message: string): Related[] =>
    device === undefined ? [] : [{ at: namePlace(device.item), message }];
  switch (why.obstacle) {
    case 'other-network':
      return why.routers.flatMap((name) =>
        at(site.deviceByName.get(name), `${asName(name)} is in ${asName(why.from)} and in ${asName(why.to)}`),
      );
    case 'no-route':
      return at(site.deviceByName.get(why.gateway), `the gateway of ${asName(why.from)}`);
    case 'no-gateway': {
      const vlan = site.vlanByName.get(why.network);
      return vlan === undefined ? [] : [{ at: namePlace(vlan.item), message: `${asName(why.network)} has no gateway` }];
    }
    default:
      return at(site.deviceByName.get(receiver), `${asName(receiver)} is declared here`);
  }
}

function fixesFor(
  { site, network }: Pick<RuleContext, 'site' | 'network'>,
  delivery: Delivery,
  receiver: string,
  why: Obstacle,
): Fix[] {
  const { stream } = delivery;
  switch (why.obstacle) {
    case 'other-network': {
      const router = site.deviceByName.get(why.routers[0] ?? '');
      if (router === undefined) return [];
      const on = putValue(router.item, 'multicast-routing', 'true');
      const ttl = stream.ttl < 2 ? putValue(stream.item, 'ttl', '2') : [];
      const title = `Let ${asName(router.name)} route multicast${ttl.length === 0 ? '' : ', with a TTL of 2'}`;
      return on.length === 0 ? [] : fixOf(title, ...on, ...ttl);
    }
    case 'joins-elsewhere': {
      const device = site.deviceByName.get(receiver);
      const { leaves } = delivery;
      if (device === undefined || leaves === undefined || stream.group === undefined || !isMulticast(stream.group))
        return [];
      const there = network.interfaces.in(device, leaves.domain);
      const now = network.interfaces.towardsGroup(device, stream.group);
      return there === undefined ? [] : sendMulticastBy(device, network.interfaces.target(there), now?.route);
    }
    case 'no-gateway': {
      const vlan = site.vlanByName.get(why.network);
      const other = site.vlanByName.get(why.to);
      if (vlan === undefined || other === undefined) return [];
      const isIn = (device: Device, of: Vlan): boolean =>
        network.interfaces.in(device, network.topology.domainOf(of))?.address !== undefined;
      const routers = site.devices.filter((device) => device.routing && isIn(device, vlan) && isIn(device, other));
      return routers.slice(0, 3).flatMap(({ name }) => {
        const edits = putValue(vlan.item, 'gateway', nameText(name));
        return fixOf(`Name ${asName(name)} as gateway of ${asName(vlan.name)}`, ...edits);
      });
    }
    default:
      return [];
  }
}

export const examples: readonly Example[] = [
  {
    bad: `
vlans:
  house: {id: 10}
  video: {id: 20, querier: core}
devices:
  core: {kind: switch, igmp-snooping: true, ports: {1: {vlan: video}, 2: {vlan: house}, 3: {vlan: video}, 4: {trunk: [house, video]}}}
  paddock-cam: {kind: camera}
  kitchen-screen: {kind: display}
  stable-screen: {kind: display}
  router: {kind: router, ports: {lan: {trunk: [house, video]}}}
cables:
  - {from: core/1, to: paddock-cam}
  - {from: core/2, to: kitchen-screen}
  - {from: core/3, to: stable-screen}
  - {from: core/4, to: router}
streams:
  paddock: {source: paddock-cam, transport: rtp, group: 239.192.20.31, port: 5004, receivers: [kitchen-screen, stable-screen]}
#                                                                                              ^^^^^^^^^^^^^^ kitchen-screen gets nothing of paddock: 239.192.20.31 is sent into video and kitchen-screen is in house, and router
`,
    good: `
vlans:
  house: {id: 10}
  video: {id: 20, querier: core}
devices:
  core: {kind: switch, igmp-snooping: true, ports: {1: {vlan: video}, 2: {vlan: video}}}
  paddock-cam: {kind: camera}
  kitchen-screen: {kind: display}
cables:
  - {from: core/1, to: paddock-cam}
  - {from: core/2, to: kitchen-screen}
streams:
  paddock: {source: paddock-cam, transport: rtp, group: 239.192.20.31, port: 5004, receivers: [kitchen-screen]}
`,
    fixed: `
vlans:
  house: {id: 10}
  video: {id: 20, querier: core}
devices:
  core: {kind: switch, igmp-snooping: true, ports: {1: {vlan: video}, 2: {vlan: house}, 3: {vlan: video}, 4: {trunk: [house, video]}}}
  paddock-cam: {kind: camera}
  kitchen-screen: {kind: display}
  stable-screen: {kind: display}
  router: {kind: router, ports: {lan: {trunk: [house, video]}}, multicast-routing: true}
cables:
  - {from: core/1, to: paddock-cam}
  - {from: core/2, to: kitchen-screen}
  - {from: core/3, to: stable-screen}
  - {from: core/4, to: router}
streams:
  paddock: {source: paddock-cam, transport: rtp, group: 239.192.20.31, port: 5004, receivers: [kitchen-screen, stable-screen], ttl: 2}
`,
  },
  {
    bad: `
vlans:
  house: {id: 10, subnet: 192.168.10.0/24, gateway: router}
  video: {id: 20, subnet: 192.168.20.0/24}
devices:
  core: {kind: switch, ports: {1: {vlan: video}, 2: {vlan: house}, 3: {trunk: [house, video]}}}
  paddock-cam: {kind: camera, address: 192.168.20.31}
  recorder: {kind: server, address: 192.168.10.5}
  attic-screen: {kind: display}
  router: {kind: router, ports: {lan: {trunk: [house, video], addresses: {house: 192.168.10.1, video: 192.168.20.1}}}}
cables:
  - {from: core/1, to: paddock-cam}
  - {from: core/2, to: recorder}
  - {from: core/3, to: router}
streams:
  paddock: {source: paddock-cam, transport: rtsp, port: 554, receivers: [recorder, attic-screen]}
#                                                                        ^^^^^^^^ recorder gets nothing of paddock: recorder is in house, paddock-cam in video, and video has no gateway
# want 84-96 attic-screen gets nothing of paddock: attic-screen has no cable
`,
    good: `
vlans:
  house: {id: 10, subnet: 192.168.10.0/24, gateway: router}
  video: {id: 20, subnet: 192.168.20.0/24, gateway: router}
devices:
  core: {kind: switch, ports: {1: {vlan: video}, 2: {vlan: house}, 3: {trunk: [house, video]}, 4: {vlan: video}}}
  paddock-cam: {kind: camera, address: 192.168.20.31}
  recorder: {kind: server, address: 192.168.10.5}
  attic-screen: {kind: display}
  router: {kind: router, ports: {lan: {trunk: [house, video], addresses: {house: 192.168.10.1, video: 192.168.20.1}}}}
cables:
  - {from: core/1, to: paddock-cam}
  - {from: core/2, to: recorder}
  - {from: core/3, to: router}
  - {from: core/4, to: attic-screen}
streams:
  paddock: {source: paddock-cam, transport: rtsp, port: 554, receivers: [recorder, attic-screen]}
`,
    fixed: `
vlans:
  house: {id: 10, subnet: 192.168.10.0/24, gateway: router}
  video: {id: 20, subnet: 192.168.20.0/24, gateway: router}
devices:
  core: {kind: switch, ports: {1: {vlan: video}, 2: {vlan: house}, 3: {trunk: [house, video]}}}
  paddock-cam: {kind: camera, address: 192.168.20.31}
  recorder: {kind: server, address: 192.168.10.5}
  attic-screen: {kind: display}
  router: {kind: router, ports: {lan: {trunk: [house, video], addresses: {house: 192.168.10.1, video: 192.168.20.1}}}}
cables:
  - {from: core/1, to: paddock-cam}
  - {from: core/2, to: recorder}
  - {from: core/3, to: router}
streams:
  paddock: {source: paddock-cam, transport: rtsp, port: 554, receivers: [recorder, attic-screen]}
`,
  },
  {
    bad: `
vlans:
  house: {id: 10, subnet: 192.168.10.0/24, gateway: router, reaches: []}
  video: {id: 20, subnet: 192.168.20.0/24, gateway: router, reaches: []}
devices:
  router: {kind: router, ports: {lan: {trunk: [house, video], addresses: {house: 192.168.10.1, video: 192.168.20.1}}}}
  core: {kind: switch, ports: {1: {trunk: [house, video]}, 2: {vlan: video}, 3: {vlan: house}}}
  recorder: {kind: server, address: 192.168.20.5}
  office-pc: {kind: computer, address: 192.168.10.20}
cables:
  - {from: core/1, to: router/lan}
  - {from: core/2, to: recorder}
  - {from: core/3, to: office-pc}
streams:
  gate: {source: recorder, transport: rtsp, port: 554, video: {codec: h264, bitrate: 6 Mb/s}, receivers: [office-pc]}
#                                                                                                         ^^^^^^^^^ house may not ask video, as its \`reaches\` says
`,
    good: `
vlans:
  house: {id: 10, subnet: 192.168.10.0/24, gateway: router, reaches: [video]}
  video: {id: 20, subnet: 192.168.20.0/24, gateway: router, reaches: []}
devices:
  router: {kind: router, ports: {lan: {trunk: [house, video], addresses: {house: 192.168.10.1, video: 192.168.20.1}}}}
  core: {kind: switch, ports: {1: {trunk: [house, video]}, 2: {vlan: video}, 3: {vlan: house}}}
  recorder: {kind: server, address: 192.168.20.5}
  office-pc: {kind: computer, address: 192.168.10.20}
cables:
  - {from: core/1, to: router/lan}
  - {from: core/2, to: recorder}
  - {from: core/3, to: office-pc}
streams:
  gate: {source: recorder, transport: rtsp, port: 554, video: {codec: h264, bitrate: 6 Mb/s}, receivers: [office-pc]}
`,
  },
];
