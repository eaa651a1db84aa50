import { isRtsp } from '../../site/model.ts';
import { addEntry, fixOf, nodeAt } from '../../site/edit.ts';
import { placeOf } from '../../site/item.ts';
import { nextFreePort } from '../../site/free/port.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';
import { asName } from '../../text/words.ts';

export const portMissing: Rule = {
  id: 'port-missing',
  severity: 'warning',
  showAfter: 'item',
  summary: 'A stream has no port.',
  why: `Sender and receiver must agree on the port, and clashes between streams cannot be seen without it. RTP takes an
even port, 5004 by custom, and RTCP the one above. RTSP is asked for at port 554 where nothing else is said.`,
  source: 'RFC 2326 §3.2, RFC 3550 §11, RFC 3551 §8, read',
  check({ site }: RuleContext, report: Report): void {
    for (const stream of site.streams) {
      const { item, name, transport, port } = stream;
      // RTSP has port 554 by default.
      if (transport === undefined || isRtsp(transport) || port !== undefined || nodeAt(item, ['port']) !== undefined)
        continue;
      const free = nextFreePort(site, stream);
      if (free === undefined) continue;
      const hint = `${free} and ${free + 1} are free`;
      report({
        at: placeOf(item, ['transport']),
        message: `${asName(name)} has no port; ${hint}. Give it one.`,
        acceptAt: [name],
        fixes: () => {
          const edit = addEntry(item, [], 'port', String(free));
          return fixOf(`Use port ${free}`, edit);
        },
      });
    }
  },
};

export const examples: readonly Example[] = [
  {
    bad: `
streams:
  yard: {source: yard-cam, transport: rtp, port: 5004, receivers: [recorder]}
  paddock: {source: paddock-cam, transport: rtp, receivers: [recorder]}
#                                           ^^^ paddock has no port; 5006 and 5007 are free
`,
    good: `
streams:
  yard: {source: yard-cam, transport: rtsp, receivers: [recorder]}
`,
    fixed: `
streams:
  yard: {source: yard-cam, transport: rtp, port: 5004, receivers: [recorder]}
  paddock: {source: paddock-cam, transport: rtp, receivers: [recorder], port: 5006}
`,
  },
];
