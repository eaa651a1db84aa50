import { formatAddress, isMulticast } from '../../standards/ipv4.ts';
import { placeOf } from '../../site/item.ts';
import type { Stream } from '../../site/model.ts';
import { nextFreeGroupFix } from '../../site/free/group.ts';
import { grouped } from '../../grouped.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';
import { asName } from '../../text/words.ts';

export const groupSeveralPorts: Rule = {
  id: 'group-several-ports',
  severity: 'warning',
  showAfter: 'item',
  summary: 'One group is used on several ports by streams that have different receivers.',
  why: `Switches forward by group and ignore ports, so whoever joins for one of the streams gets the others as
well: its link carries them, and the device throws them away. Give each stream a group of its own.`,
  source: 'RFC 4541 §2.1.2 (forwarding by group), read; one group a stream is common practice',
  check({ site }: RuleContext, report: Report): void {
    for (const [group, streams] of grouped(site.streams, (stream) => stream.group)) {
      const [first, ...more] = streams;
      if (first?.port === undefined || !isMulticast(group)) continue;
      for (const stream of more) {
        if (stream.port === undefined || stream.port === first.port || sameReceivers(first, stream)) continue;
        report({
          at: placeOf(stream.item, ['group']),
          message:
            `${formatAddress(group)} also carries ${asName(first.name)}, on port ${first.port}; switches forward by group ` +
            `alone, so receivers of either get both. Give ${asName(stream.name)} a group of its own.`,
          acceptAt: [stream.name],
          related: [{ at: placeOf(first.item, ['group']), message: `the group of ${asName(first.name)}` }],
          fixes: () => nextFreeGroupFix(site, stream),
        });
      }
    }
  },
};

/** Nothing is lost where the receivers want both streams, such as separate video and audio. */
function sameReceivers(a: Stream, b: Stream): boolean {
  const others = new Set(b.receivers);
  return a.receivers.length === b.receivers.length && a.receivers.every((name) => others.has(name));
}

export const examples: readonly Example[] = [
  {
    bad: `
streams:
  paddock-live: {source: recorder, transport: rtp, group: 239.192.20.31, port: 5004, receivers: [kitchen-screen]}
  yard-live: {source: recorder, transport: rtp, group: 239.192.20.31, port: 5006, receivers: [stable-screen]}
#                                                      ^^^^^^^^^^^^^ 239.192.20.31 also carries paddock-live, on port 5004
`,
    good: `
streams:
  paddock-live: {source: recorder, transport: rtp, group: 239.192.20.31, port: 5004, receivers: [kitchen-screen]}
  paddock-sound: {source: recorder, transport: rtp, group: 239.192.20.31, port: 5006, receivers: [kitchen-screen]}
  yard-live: {source: recorder, transport: rtp, group: 239.192.20.32, port: 5006, receivers: [stable-screen]}
`,
    fixed: `
streams:
  paddock-live: {source: recorder, transport: rtp, group: 239.192.20.31, port: 5004, receivers: [kitchen-screen]}
  yard-live: {source: recorder, transport: rtp, group: 239.192.20.32, port: 5006, receivers: [stable-screen]}
`,
  },
];
