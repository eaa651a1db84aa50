import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';
import { type Link, oppositePort } from '../../network/link.ts';
import { linePeakOf } from '../../network/loads.ts';
import { fixOf, putValue } from '../../site/edit.ts';
import { namePlace } from '../../site/item.ts';
import { type Port, portName } from '../../site/model.ts';
import { placeOfEnd } from '../../site/places.ts';
import { bitRate, percentOver, asName } from '../../text/words.ts';

export const unshownFlooded: Rule = {
  id: 'unshown-flooded',
  severity: 'hint',
  summary: 'Some switches would flood a link with groups that no screen is showing.',
  why: `A screen that shows some of many streams joins only their groups. What a switch does with the others, which
nobody has joined then, differs: some send them nowhere, others everywhere, and then the link carries all of them at
once. Loads are computed as if the switch dropped them. See how it is set, and say so: \`unregistered-multicast: drop\`,
or \`flood\`, with which the loads count all of them.`,
  source:
    'RFC 4541 §2.1.2(3), read; Open vSwitch floods them and the Linux bridge with a querier does not, both measured',
  check({ site, network }: RuleContext, report: Report): void {
    if (network.choices.groups.size === 0) return;
    const { limit } = site.policies.linkLoad;
    const reported = new Set<string>();
    const look = (link: Link, out: Port): void => {
      const { device } = out;
      const { capacity } = link;
      if (!device.snooping || device.unregisteredDeclared || reported.has(device.name)) return;
      if (capacity === undefined || capacity === 0) return;
      const { peak } = network.load(link, out).line;
      const more = network
        .waiting(link, out)
        .filter(({ stream }) => stream.group !== undefined)
        .reduce((sum, copies) => sum + linePeakOf(copies, network.rates(copies.stream)), 0);
      // link-load reports a load that is too much without the flooded streams.
      if (more === 0 || peak * 10_000 > limit * capacity || (peak + more) * 10_000 <= limit * capacity) return;
      reported.add(device.name);
      report({
        at: namePlace(device.item),
        message:
          `If ${asName(device.name)} floods what nobody has joined, as some switches do, ${portName(out)} → ` +
          `${portName(oppositePort(link, out))} carries ${bitRate(peak + more)}, ` +
          `${percentOver(peak + more, capacity, limit)} of ${bitRate(capacity)}, ` +
          'whatever the screen shows. Check its setting, and declare it as unregistered-multicast.',
        acceptAt: [device.name],
        related: [{ at: placeOfEnd(link, out), message: `${portName(out)} would carry it` }],
        fixes: () =>
          fixOf(
            `Say that ${asName(device.name)} drops what nobody has joined`,
            ...putValue(device.item, 'unregistered-multicast', 'drop'),
          ),
      });
    };
    for (const link of network.topology.links) {
      look(link, link.a);
      look(link, link.b);
    }
  },
};

export const examples: readonly Example[] = [
  {
    bad: `
vlans:
  tv: {id: 40, querier: core}
devices:
  core: {kind: switch, address: 192.168.40.2, igmp-snooping: true, ports: {1: {speed: 1 Gb/s, vlan: tv}, 2: {speed: 100 Mb/s, vlan: tv}}}
# ^^^^ If core floods what nobody has joined, as some switches do, core/2 → parlour-screen/eth carries 102 Mb/s, 102 % of 100 Mb/s
  tv-tuner: {kind: tuner, speed: 1 Gb/s}
  parlour-screen: {kind: display, speed: 100 Mb/s, decoders: 1}
cables:
  - {from: core/1, to: tv-tuner}
  - {from: core/2, to: parlour-screen}
streams:
  tv-one: {source: tv-tuner, transport: ts-rtp, group: 239.192.30.1, port: 5004, mux-rate: 48 Mb/s, receivers: [parlour-screen]}
  tv-two: {source: tv-tuner, transport: ts-rtp, group: 239.192.30.2, port: 5004, mux-rate: 48 Mb/s, receivers: [parlour-screen]}
`,
    fixed: `
vlans:
  tv: {id: 40, querier: core}
devices:
  core: {kind: switch, address: 192.168.40.2, igmp-snooping: true, ports: {1: {speed: 1 Gb/s, vlan: tv}, 2: {speed: 100 Mb/s, vlan: tv}}, unregistered-multicast: drop}
  tv-tuner: {kind: tuner, speed: 1 Gb/s}
  parlour-screen: {kind: display, speed: 100 Mb/s, decoders: 1}
cables:
  - {from: core/1, to: tv-tuner}
  - {from: core/2, to: parlour-screen}
streams:
  tv-one: {source: tv-tuner, transport: ts-rtp, group: 239.192.30.1, port: 5004, mux-rate: 48 Mb/s, receivers: [parlour-screen]}
  tv-two: {source: tv-tuner, transport: ts-rtp, group: 239.192.30.2, port: 5004, mux-rate: 48 Mb/s, receivers: [parlour-screen]}
`,
  },
];
