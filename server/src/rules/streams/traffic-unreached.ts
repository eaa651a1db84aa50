import type { Example, Finding, Report, Rule, RuleContext } from '../../lint/rule.ts';
import type { Obstacle } from '../../network/delivery.ts';
import { obstacleWords } from '../../network/obstacle-words.ts';
import { trafficAsStream } from '../../network/traffic.ts';
import { placeOf } from '../../site/item.ts';
import type { Device, Traffic } from '../../site/model.ts';
import { few, asName } from '../../text/words.ts';
import { grouped } from '../../grouped.ts';

export const trafficUnreached: Rule = {
  id: 'traffic-unreached',
  severity: 'error',
  summary: 'Other traffic does not reach its destination.',
  why: `It takes the paths that streams take: within a VLAN along the switches, to another VLAN through the gateway. Without
a path it gets nowhere, and loads no link. Remove the obstacle, or correct its ends.`,
  source: 'RFC 1812 §5.2 (how routers forward), from memory',
  check({ network }: RuleContext, report: Report): void {
    const stopped: Stopped[] = [];
    for (const { traffic, from, to, obstacle } of network.traffic) {
      // unknown-name reports a name that is no device.
      if (from === undefined || to === undefined) continue;
      if (from === to) {
        const message = `${asName(traffic.name)} goes from ${asName(from.name)} to itself, so that it takes no link. Correct one of its ends.`;
        report({ at: placeOf(traffic.item, ['to']), message, acceptAt: [traffic.name, from.name] });
      } else if (obstacle !== undefined) stopped.push({ traffic, from, to, obstacle });
    }
    // One obstacle to several is one finding.
    const alike = grouped(stopped, ({ traffic, to, obstacle }) => wordsOf({ traffic, to, obstacle }));
    for (const [words, [first, ...others]] of alike) if (first !== undefined) report(findingOf(words, first, others));
  },
};

interface Stopped {
  readonly traffic: Traffic;
  readonly from: Device;
  readonly to: Device;
  readonly obstacle: Obstacle;
}

function wordsOf({ traffic, to, obstacle }: Omit<Stopped, 'from'>): string {
  const { what, remedy } = obstacleWords(obstacle, to.name, trafficAsStream(traffic, to));
  return `${what}. ${remedy.replace(/^./, (first) => first.toUpperCase())}.`;
}

function findingOf(words: string, first: Stopped, others: readonly Stopped[]): Finding {
  const all = [first, ...others];
  const verb = others.length === 0 ? 'does' : 'do';
  return {
    at: placeOf(first.traffic.item, ['to']),
    message: `${few(all.map(({ traffic }) => traffic.name))} ${verb} not get to ${asName(first.to.name)}: ${words}`,
    acceptAt: [...new Set(all.flatMap(({ traffic, from, to }) => [traffic.name, to.name, from.name]))],
    effects: all.map(({ obstacle }) => obstacle),
    related: others.map(({ traffic }) => ({
      at: placeOf(traffic.item, ['to']),
      message: `${asName(traffic.name)} does not get there either`,
    })),
  };
}

export const examples: readonly Example[] = [
  {
    bad: `
vlans:
  house: {id: 10, subnet: 192.168.10.0/24}
  video: {id: 20, subnet: 192.168.20.0/24}
devices:
  core: {kind: switch, ports: {1: {vlan: house}, 2: {vlan: video}}}
  office-pc: {kind: computer, address: 192.168.10.20}
  recorder: {kind: server, address: 192.168.20.5}
cables:
  - {from: core/1, to: office-pc}
  - {from: core/2, to: recorder}
traffic:
  backup: {from: recorder, to: office-pc, rate: 200 Mb/s}
#                              ^^^^^^^^^ backup and index do not get to office-pc: office-pc is in house, recorder in video, and video has no gateway
  index: {from: recorder, to: office-pc, rate: 1 Mb/s}
  copies: {from: recorder, to: recorder, rate: 50 Mb/s}
#                              ^^^^^^^^ copies goes from recorder to itself
`,
    good: `
vlans:
  house: {id: 10, subnet: 192.168.10.0/24}
devices:
  core: {kind: switch, ports: {1-2: {speed: 1 Gb/s, vlan: house}}}
  office-pc: {kind: computer, address: 192.168.10.20, speed: 1 Gb/s}
  recorder: {kind: server, address: 192.168.10.5, speed: 1 Gb/s}
cables:
  - {from: core/1, to: office-pc}
  - {from: core/2, to: recorder}
traffic:
  backup: {from: recorder, to: office-pc, rate: 200 Mb/s}
`,
  },
  {
    bad: `
vlans:
  house: {id: 10, subnet: 192.168.10.0/24, gateway: router}
  video: {id: 20, subnet: 192.168.20.0/24, gateway: router, internet: false}
devices:
  provider: {kind: internet, down: 100 Mb/s, up: 20 Mb/s}
  router: {kind: router, ports: {wan: {}, lan: {trunk: [house, video], addresses: {house: 192.168.10.1, video: 192.168.20.1}}}}
  core: {kind: switch, ports: {1: {trunk: [house, video]}, 2: {vlan: video}}}
  recorder: {kind: server, address: 192.168.20.5}
cables:
  - {from: router/wan, to: provider}
  - {from: core/1, to: router/lan}
  - {from: core/2, to: recorder}
traffic:
  viewing: {from: recorder, to: provider, rate: 4 Mb/s}
#                               ^^^^^^^^ viewing does not get to provider: video is kept from the Internet
`,
    good: `
vlans:
  house: {id: 10, subnet: 192.168.10.0/24, gateway: router}
  video: {id: 20, subnet: 192.168.20.0/24, gateway: router, internet: true}
devices:
  provider: {kind: internet, down: 100 Mb/s, up: 20 Mb/s}
  router: {kind: router, ports: {wan: {}, lan: {trunk: [house, video], addresses: {house: 192.168.10.1, video: 192.168.20.1}}}}
  core: {kind: switch, ports: {1: {trunk: [house, video]}, 2: {vlan: video}}}
  recorder: {kind: server, address: 192.168.20.5}
cables:
  - {from: router/wan, to: provider}
  - {from: core/1, to: router/lan}
  - {from: core/2, to: recorder}
traffic:
  viewing: {from: recorder, to: provider, rate: 4 Mb/s}
`,
  },
];
