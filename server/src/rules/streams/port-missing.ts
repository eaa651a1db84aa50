import { isRtsp } from '../../site/model.ts';
import { addEntry, fixOf, nodeAt } from '../../site/edit.ts';
import { placeOf } from '../../site/item.ts';
import { nextFreePort } from '../../site/free/port.ts';
import { RTSP_PORT } from '../../standards/rtp.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';

export const portMissing: Rule = {
  id: 'port-missing',
  severity: 'warning',
  due: 'item',
  summary: 'A stream has no port.',
  why: `Sender and receiver must agree on the port, and clashes between streams cannot be seen without it. RTSP is asked
for at port 554 unless the camera says otherwise; RTP takes an even port, 5004 by custom, and RTCP the one above.`,
  source: 'RFC 2326 §3.2, RFC 3550 §11, RFC 3551 §8, read',
  check({ site }: RuleContext, report: Report): void {
    for (const stream of site.streams) {
      const { item, name, transport, port } = stream;
      if (transport === undefined || port !== undefined || nodeAt(item, ['port']) !== undefined) continue;
      const free = isRtsp(transport) ? RTSP_PORT : nextFreePort(site, stream);
      if (free === undefined) continue;
      const hint = isRtsp(transport)
        ? 'for rtsp it is 554 unless the source says otherwise'
        : `${free} and ${free + 1} are free`;
      report({
        at: placeOf(item, ['transport']),
        message: `${name} has no port; ${hint}. Give it one.`,
        about: [name],
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
  paddock: {source: paddock-cam, transport: rtsp, receivers: [recorder]}
#                                           ^^^^ paddock has no port; for rtsp it is 554
`,
    good: `
streams:
  paddock: {source: paddock-cam, transport: rtsp, port: 554, receivers: [recorder]}
`,
    fixed: `
streams:
  paddock: {source: paddock-cam, transport: rtsp, receivers: [recorder], port: 554}
`,
  },
  {
    bad: `
streams:
  yard: {source: yard-cam, transport: rtp, port: 5004, receivers: [recorder]}
  paddock: {source: paddock-cam, transport: rtp, receivers: [recorder]}
#                                           ^^^ paddock has no port; 5006 and 5007 are free
`,
    fixed: `
streams:
  yard: {source: yard-cam, transport: rtp, port: 5004, receivers: [recorder]}
  paddock: {source: paddock-cam, transport: rtp, receivers: [recorder], port: 5006}
`,
  },
];
