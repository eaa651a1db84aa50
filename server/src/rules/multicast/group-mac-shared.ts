import { formatAddress, isMulticast } from '../../standards/ipv4.ts';
import { groupMac, macKey } from '../../standards/multicast.ts';
import { placeOf } from '../../site/item.ts';
import { few, asName } from '../../text/words.ts';
import { nextFreeGroupFix } from '../../site/free/group.ts';
import { grouped } from '../../grouped.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';

export const groupMacShared: Rule = {
  id: 'group-mac-shared',
  severity: 'warning',
  showAfter: 'value',
  summary: 'Two groups in use have the same MAC address.',
  why: `A MAC address holds 23 of the 28 bits that tell groups apart, so 32 groups share each one. Network cards filter
by it, and so do many switches: where one of the groups is wanted, the other comes too. Take groups that differ in the
last 23 bits, that is in more than the first octet and the highest bit of the second.`,
  source: 'RFC 1112 §6.4 and RFC 4541 §2.1.2(5), read',
  check({ site }: RuleContext, report: Report): void {
    const sent = site.streams.flatMap((stream) => {
      const { group } = stream;
      return group !== undefined && isMulticast(group) ? [{ stream, group }] : [];
    });
    for (const alike of grouped(sent, ({ group }) => macKey(group)).values()) {
      // At most 32 groups, which differ in the five bits that a MAC address leaves out.
      const byGroup = grouped(alike, ({ group }) => group);
      for (const { stream, group } of alike) {
        const total = alike.length - (byGroup.get(group)?.length ?? 0);
        if (total === 0) continue;
        const others = [...byGroup]
          .flatMap(([other, streams]) => (other === group ? [] : streams.slice(0, SHOWN)))
          .slice(0, SHOWN);
        const names = others.map((other) => `${formatAddress(other.group)} of ${asName(other.stream.name)}`);
        report({
          at: placeOf(stream.item, ['group']),
          message:
            `${formatAddress(group)} has the MAC address ${groupMac(group)}, as has ${few(names, 2, total)}: where ` +
            'one is wanted, a switch may send both. Take another group.',
          acceptAt: [stream.name],
          related: others.map(({ stream: { item, name } }) => ({
            at: placeOf(item, ['group']),
            message: `the group of ${asName(name)}`,
          })),
          fixes: () => nextFreeGroupFix(site, stream),
        });
      }
    }
  },
};

/** The most that are listed. */
const SHOWN = 5;

export const examples: readonly Example[] = [
  {
    bad: `
streams:
  paddock-live: {source: recorder, transport: rtp, group: 239.192.10.20, port: 5004}
#                                                         ^^^^^^^^^^^^^ 239.192.10.20 has the MAC address 01:00:5e:40:0a:14, as has 239.64.10.20 of tv
  tv: {source: recorder, transport: ts-rtp, group: 239.64.10.20, port: 5004}
#                                                  ^^^^^^^^^^^^ as has 239.192.10.20 of paddock-live
`,
    good: `
streams:
  paddock-live: {source: recorder, transport: rtp, group: 239.192.10.20, port: 5004}
  tv: {source: recorder, transport: ts-rtp, group: 239.192.10.21, port: 5004}
`,
    fixed: `
streams:
  paddock-live: {source: recorder, transport: rtp, group: 239.192.10.21, port: 5004}
  tv: {source: recorder, transport: ts-rtp, group: 239.64.10.20, port: 5004}
`,
  },
];
