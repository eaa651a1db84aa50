import { fixOf, setValue } from '../../site/edit.ts';
import { placeOf } from '../../site/item.ts';
import { LAST_PORT, isDatagrams, lastPortOf, nextFreePort } from '../../site/free/port.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';
import { asName } from '../../text/words.ts';

export const portBeyondLast: Rule = {
  id: 'port-beyond-last',
  severity: 'error',
  showAfter: 'value',
  summary: 'RTCP or audio of a stream would go to a port beyond 65535.',
  why: `RTP uses the port that is given, RTCP the next one, and audio beside video the next two. There is none above
65535, so these cannot be sent. Use a lower port; those from 49152 up are meant for such use.`,
  source: 'RFC 3550 §11 (RTCP at the next port); RFC 768 (ports of 16 bits), both from memory',
  check({ site }: RuleContext, report: Report): void {
    for (const stream of site.streams) {
      const { item, name, port } = stream;
      const last = lastPortOf(site, stream);
      if (port === undefined || last === undefined || port > LAST_PORT || last <= LAST_PORT || !isDatagrams(stream))
        continue;
      report({
        at: placeOf(item, ['port']),
        message:
          `${asName(name)} takes ports ${port} to ${last}, RTCP${last - port > 1 ? ' and audio' : ''} at those above its own, ` +
          `and ${LAST_PORT} is the last there is. Take a lower one.`,
        acceptAt: [name],
        fixes: () => {
          const free = nextFreePort(site, stream);
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
  paddock: {source: recorder, transport: rtp, group: 239.192.20.31, port: 65534, video: {codec: h264, bitrate: 6 Mb/s}, audio: {codec: aac, bitrate: 96 kb/s}}
#                                                                         ^^^^^ paddock takes ports 65534 to 65537, RTCP and audio at those above its own
`,
    fixed: `
streams:
  paddock: {source: recorder, transport: rtp, group: 239.192.20.31, port: 5004, video: {codec: h264, bitrate: 6 Mb/s}, audio: {codec: aac, bitrate: 96 kb/s}}
`,
  },
];
