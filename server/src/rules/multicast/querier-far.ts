import { oppositePort } from '../../network/link.ts';
import { bestQuerier } from '../../network/querier.ts';
import { fixOf, scalarText, setValue } from '../../site/edit.ts';
import { placeOf } from '../../site/item.ts';
import { portName } from '../../site/model.ts';
import { bitRate, few, asName } from '../../text/words.ts';
import { grouped } from '../../grouped.ts';
import { unwantedStreams } from '../../network/overload.ts';
import { placeOfEnd } from '../../site/places.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';

export const querierFar: Rule = {
  id: 'querier-far',
  severity: 'error',
  summary: 'A link is overloaded because all groups of the VLAN travel over it to the querier.',
  why: `Snooping switches send every group towards the querier, whether somebody there wants it or not. With the querier
at the far end of a slow link, that link carries all groups of the VLAN. Let the switch nearest the senders be the
querier.`,
  source: 'RFC 4541 §2.1.2(1), read; measured on Open vSwitch',
  check({ plan, site, network }: RuleContext, report: Report): void {
    const overloads = plan.overloads.filter(({ reason }) => reason === 'to-querier');
    for (const [domain, far] of grouped(overloads, ({ domains }) => [...domains][0])) {
      const { vlan } = domain;
      const [worst] = far;
      if (worst === undefined || vlan?.querier === undefined) continue;
      if (network.tree(domain).querier?.name !== vlan.querier) continue;
      const better = bestQuerier(site, network, domain);
      if (better === undefined || better.name === vlan.querier) continue;
      const { link, out, unwanted } = worst;
      report({
        at: placeOf(vlan.item, ['querier']),
        message:
          `All groups of ${asName(vlan.name)} travel to ${asName(vlan.querier)}: ${portName(out)} → ` +
          `${portName(oppositePort(link, out))} carries ${bitRate(unwanted)} of ` +
          `${few(unwantedStreams(network, worst))} that nobody behind asked for. ${asName(better.name)} is nearer the ` +
          'senders: let it be the querier.',
        acceptAt: [vlan.name, vlan.querier],
        severity: far.some(({ over }) => over === 'limit') ? 'error' : 'warning',
        entails: far.map((each) => network.load(each.link, each.out)),
        related: [{ at: placeOfEnd(link, out), message: `${portName(out)} leads to the querier` }],
        fixes: () =>
          fixOf(
            `Name ${asName(better.name)} as querier of ${asName(vlan.name)}`,
            setValue(vlan.item, ['querier'], scalarText(better.name, true)),
          ),
      });
    }
  },
};

export const examples: readonly Example[] = [
  {
    bad: `
vlans:
  video: {id: 20, querier: barn}
#                          ^^^^ All groups of video travel to barn: core/16 → barn/1 carries 81.4 Mb/s of tv that nobody behind asked for
devices:
  core: {kind: switch, igmp-snooping: true, ports: {1: {speed: 1 Gb/s, vlan: video}, 2: {speed: 1 Gb/s, vlan: video}, 16: {speed: 100 Mb/s, trunk: [video]}}}
  barn: {kind: switch, igmp-snooping: true, ports: {1: {speed: 100 Mb/s, trunk: [video]}}}
  headend: {kind: server, speed: 1 Gb/s}
  kitchen-screen: {kind: display, speed: 1 Gb/s}
cables:
  - {from: core/1, to: headend}
  - {from: core/2, to: kitchen-screen}
  - {from: core/16, to: barn/1}
streams:
  tv: {source: headend, transport: ts-rtp, group: 239.192.30.1, port: 5004, mux-rate: 76.6 Mb/s, receivers: [kitchen-screen]}
`,
    fixed: `
vlans:
  video: {id: 20, querier: core}
devices:
  core: {kind: switch, igmp-snooping: true, ports: {1: {speed: 1 Gb/s, vlan: video}, 2: {speed: 1 Gb/s, vlan: video}, 16: {speed: 100 Mb/s, trunk: [video]}}}
  barn: {kind: switch, igmp-snooping: true, ports: {1: {speed: 100 Mb/s, trunk: [video]}}}
  headend: {kind: server, speed: 1 Gb/s}
  kitchen-screen: {kind: display, speed: 1 Gb/s}
cables:
  - {from: core/1, to: headend}
  - {from: core/2, to: kitchen-screen}
  - {from: core/16, to: barn/1}
streams:
  tv: {source: headend, transport: ts-rtp, group: 239.192.30.1, port: 5004, mux-rate: 76.6 Mb/s, receivers: [kitchen-screen]}
`,
  },
];
