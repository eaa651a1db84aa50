import { formatAddress, isMulticast } from '../../standards/ipv4.ts';
import { placeOf } from '../../site/item.ts';
import { nextFreeGroupFix } from '../../site/free/group.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';

export const groupNotMulticast: Rule = {
  id: 'group-not-multicast',
  severity: 'error',
  showAfter: 'value',
  summary: 'The group of a stream is not a multicast address.',
  why: `Groups are the addresses 224.0.0.0 to 239.255.255.255. Any other names one host, so nobody can join it. Take a
group in 239.192.0.0/14, or in 239.255.0.0/16 for a single house; for one copy to each receiver leave \`group\` out.`,
  source: 'RFC 5771 §3, RFC 2365 §6, read',
  check({ site, network }: RuleContext, report: Report): void {
    for (const stream of site.streams) {
      if (stream.group === undefined || isMulticast(stream.group)) continue;
      report({
        at: placeOf(stream.item, ['group']),
        message:
          `${formatAddress(stream.group)} is not a multicast group; groups are 224.0.0.0 to 239.255.255.255. Take ` +
          'one in 239.192.0.0/14, or in 239.255.0.0/16 for a single house.',
        acceptAt: [stream.name],
        // It reaches no receiver, and is not recorded.
        entails: [
          ...network.delivery(stream).unreached.flatMap((one) => [one, one.why]),
          ...site.recordings.filter((recording) => recording.stream === stream.name),
        ],
        fixes: () => nextFreeGroupFix(site, stream),
      });
    }
  },
};

export const examples: readonly Example[] = [
  {
    bad: `
streams:
  paddock-live: {source: recorder, transport: rtp, group: 192.168.20.31, port: 5004}
#                                                         ^^^^^^^^^^^^^ 192.168.20.31 is not a multicast group
`,
    good: `
streams:
  paddock-live: {source: recorder, transport: rtp, group: 239.192.20.31, port: 5004}
`,
    fixed: `
streams:
  paddock-live: {source: recorder, transport: rtp, group: 239.192.0.1, port: 5004}
`,
  },
];
