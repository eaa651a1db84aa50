import { namePlace } from '../../site/item.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';
import { asName } from '../../text/words.ts';

export const noReceivers: Rule = {
  id: 'no-receivers',
  severity: 'information',
  summary: 'Nobody receives a stream.',
  why: `A unicast stream that nobody asks for is not sent, and loads no link. A group is sent anyway: it loads the way to the
querier, and floods where switches flood groups that nobody has joined. Name its receivers, or remove the stream.`,
  source: 'RFC 4541 §2.1.2(3), read',
  check({ site }: RuleContext, report: Report): void {
    // Reported by carried-not-received, or by a rule about the recording.
    const used = new Set([
      ...site.streams.map(({ carries }) => carries),
      ...site.recordings.map(({ stream }) => stream),
    ]);
    for (const { item, name, receivers, group } of site.streams) {
      if (receivers.length > 0 || used.has(name) || item.problems.some(({ keyPath }) => keyPath[0] === 'receivers'))
        continue;
      const effect = group === undefined ? ', so it is not sent' : '; its group is sent anyway';
      report({
        at: namePlace(item),
        message: `Nobody receives ${asName(name)}${effect}. Name its receivers, or remove it.`,
        acceptAt: [name],
      });
    }
  },
};

export const examples: readonly Example[] = [
  {
    bad: `
streams:
  paddock-live: {source: recorder, transport: rtp, port: 5004, group: 239.192.20.31}
# ^^^^^^^^^^^^ Nobody receives paddock-live; its group is sent anyway. Name
  yard: {source: yard-cam, transport: rtsp, port: 554, receivers: []}
# ^^^^ Nobody receives yard, so it is not sent
`,
    good: `
streams:
  paddock-live: {source: recorder, transport: rtp, port: 5004, group: 239.192.20.31, receivers: [kitchen-screen]}
`,
  },
];
