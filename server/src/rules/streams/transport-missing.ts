import { addEntry, fixOf } from '../../site/edit.ts';
import { namePlace } from '../../site/item.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';
import { asName } from '../../text/words.ts';

export const transportMissing: Rule = {
  id: 'transport-missing',
  severity: 'warning',
  showAfter: 'item',
  summary: 'A stream does not say how it is packed.',
  why: `The headers make a few per cent of difference in the rate, and decide whether a receiver can play it at all. Without \`transport\`
the stream is counted as \`rtp\`. A stream that carries another has a transport of its own, since it is packed anew.`,
  check({ site }: RuleContext, report: Report): void {
    for (const { item, name, transport, carries, receivers, group } of site.streams) {
      // value-not-allowed reports an unknown transport.
      if (
        transport !== undefined ||
        (receivers.length === 0 && group === undefined) ||
        item.problems.some(({ keyPath }) => keyPath[0] === 'transport')
      )
        continue;
      const over = carries === undefined ? '' : `, and takes none over from ${asName(carries)}`;
      report({
        at: namePlace(item),
        message:
          `${asName(name)} has no transport${over}: it is counted as rtp. Say how it is packed: rtsp, rtsp-udp, ` +
          'rtp, ts-udp or ts-rtp.',
        acceptAt: [name],
        fixes: () => {
          const edit = addEntry(item, [], 'transport', 'rtp');
          return fixOf('Say that it is rtp', edit);
        },
      });
    }
  },
};

export const examples: readonly Example[] = [
  {
    bad: `
streams:
  paddock: {source: paddock-cam, transport: rtsp, port: 554, video: {bitrate: 6 Mb/s}, receivers: [recorder]}
  paddock-live: {source: recorder, carries: paddock, group: 239.192.20.31, receivers: [kitchen-screen]}
# ^^^^^^^^^^^^ paddock-live has no transport, and takes none over from paddock
`,
    good: `
streams:
  paddock: {source: paddock-cam, transport: rtsp, port: 554, video: {bitrate: 6 Mb/s}, receivers: [recorder]}
  paddock-live: {source: recorder, carries: paddock, transport: rtp, port: 5004, group: 239.192.20.31, receivers: [kitchen-screen]}
`,
    fixed: `
streams:
  paddock: {source: paddock-cam, transport: rtsp, port: 554, video: {bitrate: 6 Mb/s}, receivers: [recorder]}
  paddock-live: {source: recorder, carries: paddock, group: 239.192.20.31, receivers: [kitchen-screen], transport: rtp}
`,
  },
];
