import { placeOf } from '../../site/item.ts';
import { receiverKeyPath } from '../../site/receiver.ts';
import { few, asName } from '../../text/words.ts';
import { fixOf, putValue } from '../../site/edit.ts';
import { hasShapeProblem } from '../../site/shape-problems.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';

export const ttlTooSmall: Rule = {
  id: 'ttl-too-small',
  severity: 'error',
  showAfter: 'item',
  summary: 'The TTL of a group is too small for a receiver behind a router.',
  why: `Each router lowers the time to live by one and does not forward a packet whose time to live is one. With a TTL of 1, the
default of most senders, a group stays in its VLAN even where the router routes multicast. One more than the routers on
the way is enough; set it at the sender too.`,
  source: 'RFC 1112 §6.1 and RFC 1812 §5.3.1, from memory',
  check({ network }: RuleContext, report: Report): void {
    for (const { stream, unreached } of network.deliveries) {
      if (unreached.length === 0 || hasShapeProblem(stream.item, ['ttl'])) continue;
      let needed = 0;
      const names: string[] = [];
      for (const { receiver, why } of unreached) {
        if (why.obstacle !== 'ttl') continue;
        names.push(receiver);
        needed = Math.max(needed, why.needed);
      }
      if (needed === 0) continue;
      const routers = needed === 2 ? '1 router' : `${needed - 1} routers`;
      report({
        at: placeOf(stream.item, ['ttl']),
        message:
          `A TTL of ${stream.ttl} does not reach ${few(names)} behind ${routers}. Set it to ${needed}, here and at ` +
          'the sender.',
        acceptAt: [stream.name, ...names],
        entails: unreached.filter(({ why }) => why.obstacle === 'ttl'),
        related: names.map((name) => ({
          at: placeOf(stream.item, receiverKeyPath(stream, name)),
          message: `${asName(name)} gets nothing`,
        })),
        fixes: () => fixOf(`Set the TTL to ${needed}`, ...putValue(stream.item, 'ttl', String(needed))),
      });
    }
  },
};

export const examples: readonly Example[] = [
  {
    bad: `
vlans:
  house: {id: 10}
  video: {id: 20}
devices:
  core: {kind: switch, igmp-snooping: true, ports: {1: {vlan: video}, 2: {vlan: house}, 3: {trunk: [house, video]}}}
  router: {kind: router, multicast-routing: true, ports: {lan: {trunk: [house, video]}}}
  paddock-cam: {kind: camera}
  kitchen-screen: {kind: display}
cables:
  - {from: core/1, to: paddock-cam}
  - {from: core/2, to: kitchen-screen}
  - {from: core/3, to: router}
streams:
  paddock: {source: paddock-cam, transport: rtp, group: 239.192.20.31, port: 5004, ttl: 1, receivers: [kitchen-screen]}
#                                                                                       ^ A TTL of 1 does not reach kitchen-screen behind 1 router
`,
    fixed: `
vlans:
  house: {id: 10}
  video: {id: 20}
devices:
  core: {kind: switch, igmp-snooping: true, ports: {1: {vlan: video}, 2: {vlan: house}, 3: {trunk: [house, video]}}}
  router: {kind: router, multicast-routing: true, ports: {lan: {trunk: [house, video]}}}
  paddock-cam: {kind: camera}
  kitchen-screen: {kind: display}
cables:
  - {from: core/1, to: paddock-cam}
  - {from: core/2, to: kitchen-screen}
  - {from: core/3, to: router}
streams:
  paddock: {source: paddock-cam, transport: rtp, group: 239.192.20.31, port: 5004, ttl: 2, receivers: [kitchen-screen]}
`,
  },
];
