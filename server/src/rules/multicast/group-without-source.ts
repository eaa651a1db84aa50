import { formatAddress, isMulticast } from '../../standards/ipv4.ts';
import { blockOf } from '../../standards/multicast.ts';
import { namePlace, placeOf } from '../../site/item.ts';
import { hasBlank } from '../../network/blanks.ts';
import { nextFreeGroupFix } from '../../site/free/group.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';
import { asName } from '../../text/words.ts';

export const groupWithoutSource: Rule = {
  id: 'group-without-source',
  severity: 'error',
  summary: 'The source of a source-specific group has no fixed address.',
  why: `In 232.0.0.0/8 a receiver joins a group and a source together, and gets nothing of that group from anybody else.
It must know the address of the source, which must not change. Give the source a fixed address, or take a group
in 239.255.0.0/16, which is joined by the group alone.`,
  source: 'RFC 4607 §1 and §4.1, from memory',
  check({ site, network }: RuleContext, report: Report): void {
    for (const stream of site.streams) {
      const { item, group, source: name } = stream;
      const source = name === undefined ? undefined : site.deviceByName.get(name);
      if (source === undefined || group === undefined || !isMulticast(group)) continue;
      if (blockOf(group).use !== 'ssm' || hasBlank(source.item)) continue;
      const { leaves } = network.delivery(stream);
      const isAddressed = source.addresses.length > 0 || source.ports.some(({ addresses }) => addresses.length > 0);
      if (isAddressed && (leaves === undefined || leaves.address !== undefined)) continue;
      const where = isAddressed ? ` in ${leaves?.domain.name ?? ''}` : '';
      report({
        at: placeOf(item, ['group']),
        message:
          `${formatAddress(group)} is joined together with its source's address, and ${asName(source.name)} has none${where}: ` +
          `nobody can join it. Give ${asName(source.name)} a fixed address, or take another group.`,
        acceptAt: [stream.name, source.name],
        related: [{ at: namePlace(source.item), message: `${asName(source.name)} has no address${where}` }],
        fixes: () => nextFreeGroupFix(site, stream),
      });
    }
  },
};

export const examples: readonly Example[] = [
  {
    bad: `
devices:
  tv-tuner: {kind: tuner}
  kitchen-screen: {kind: display, address: 192.168.20.61}
streams:
  tv: {source: tv-tuner, transport: ts-udp, group: 232.1.2.3, port: 5004, mux-rate: 12 Mb/s, receivers: [kitchen-screen]}
#                                                  ^^^^^^^^^ 232.1.2.3 is joined together with its source's address, and tv-tuner has none: nobody
`,
    good: `
devices:
  tv-tuner: {kind: tuner, address: 192.168.20.9}
  kitchen-screen: {kind: display, address: 192.168.20.61}
streams:
  tv: {source: tv-tuner, transport: ts-udp, group: 232.1.2.3, port: 5004, mux-rate: 12 Mb/s, receivers: [kitchen-screen]}
`,
    fixed: `
devices:
  tv-tuner: {kind: tuner}
  kitchen-screen: {kind: display, address: 192.168.20.61}
streams:
  tv: {source: tv-tuner, transport: ts-udp, group: 239.192.0.1, port: 5004, mux-rate: 12 Mb/s, receivers: [kitchen-screen]}
`,
  },
];
