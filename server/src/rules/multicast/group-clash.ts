import { formatAddress, isMulticast } from '../../standards/ipv4.ts';
import { blockOf } from '../../standards/multicast.ts';
import { placeOf } from '../../site/item.ts';
import type { Stream } from '../../site/model.ts';
import { few, asName } from '../../text/words.ts';
import { nextFreeGroupFix } from '../../site/free/group.ts';
import { firstOthers, grouped } from '../../grouped.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';

export const groupClash: Rule = {
  id: 'group-clash',
  severity: 'error',
  showAfter: 'value',
  summary: 'Two streams are sent to the same group and port.',
  why: `Whoever joins the group gets the packets of both, mixed, and shows neither well; every link carries both. Give
each stream a group of its own.`,
  source: 'RFC 1112 §4 and §7: a host that joins a group gets all that is sent to it; from memory',
  check({ site }: RuleContext, report: Report): void {
    for (const streams of grouped(site.streams, destination).values()) {
      for (const stream of streams) {
        const { group, port } = stream;
        const others = firstOthers(streams, stream, 5);
        if (group === undefined || port === undefined || others.length === 0) continue;
        const names = others.map(({ name }) => name);
        const verb = others.length === 1 ? 'is' : 'are';
        report({
          at: placeOf(stream.item, ['group']),
          message:
            `${few(names, 2, streams.length - 1)} ${verb} also sent to ${formatAddress(group)} port ${port}: ` +
            'receivers get them mixed. Give each stream a group of its own.',
          acceptAt: [stream.name],
          related: others.map((other) => ({
            at: placeOf(other.item, ['group']),
            message: `the group of ${asName(other.name)}`,
          })),
          fixes: () => nextFreeGroupFix(site, stream),
        });
      }
    }
  },
};

/** With source-specific multicast (RFC 4607) receivers distinguish streams of one group by their source. */
function destination({ group, port, source }: Stream): string | undefined {
  if (group === undefined || port === undefined || !isMulticast(group)) return undefined;
  return `${group}:${port}${blockOf(group).use === 'ssm' ? `:${source}` : ''}`;
}

export const examples: readonly Example[] = [
  {
    bad: `
streams:
  paddock-live: {source: recorder, transport: rtp, group: 239.192.20.31, port: 5004}
#                                                         ^^^^^^^^^^^^^ yard-live is also sent to 239.192.20.31 port 5004
  yard-live: {source: recorder, transport: rtp, group: 239.192.20.31, port: 5004}
#                                                      ^^^^^^^^^^^^^ paddock-live is also sent to 239.192.20.31 port 5004
`,
    good: `
streams:
  paddock-live: {source: recorder, transport: rtp, group: 239.192.20.31, port: 5004}
  yard-live: {source: recorder, transport: rtp, group: 239.192.20.32, port: 5004}
`,
    fixed: `
streams:
  paddock-live: {source: recorder, transport: rtp, group: 239.192.20.32, port: 5004}
  yard-live: {source: recorder, transport: rtp, group: 239.192.20.31, port: 5004}
`,
  },
];
