import { fixOf, setValue } from '../../site/edit.ts';
import { placeOf } from '../../site/item.ts';
import { LAST_PORT, isRtp, lastPortOf, nextFreePort } from '../../site/free/port.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';

export const rtpPort: Rule = {
  id: 'rtp-port',
  severity: 'warning',
  showAfter: 'value',
  summary: 'RTP is sent to an odd port.',
  why: `RTP takes an even port and its control protocol RTCP the odd one above. A receiver that is given an odd port may
take it for the RTCP port and listen on the even one below, and hear nothing.`,
  source: 'RFC 3550 §11, read',
  check({ site }: RuleContext, report: Report): void {
    for (const stream of site.streams) {
      const { item, name, port } = stream;
      if (port === undefined || port % 2 === 0 || !isRtp(stream)) continue;
      // port-beyond-last reports a port that leaves none for RTCP.
      if ((lastPortOf(site, stream) ?? 0) > LAST_PORT) continue;
      const free = nextFreePort(site, stream, Math.max(port - 1, 2));
      report({
        at: placeOf(item, ['port']),
        message:
          `${port} is odd: RTP takes an even port, and RTCP the odd one above. Use ` +
          `${free ?? 'an even port that is free'}.`,
        acceptAt: [name],
        fixes: () => {
          return free === undefined ? [] : fixOf(`Use port ${free}`, setValue(item, ['port'], String(free)));
        },
      });
    }
  },
};

export const examples: readonly Example[] = [
  {
    bad: `
streams:
  paddock-live: {source: recorder, transport: rtp, group: 239.192.20.31, port: 5005}
#                                                                              ^^^^ 5005 is odd
`,
    good: `
streams:
  paddock-live: {source: recorder, transport: rtp, group: 239.192.20.31, port: 5004}
  tv: {source: recorder, transport: ts-udp, group: 239.192.30.1, port: 1235}
`,
    fixed: `
streams:
  paddock-live: {source: recorder, transport: rtp, group: 239.192.20.31, port: 5004}
`,
  },
];
