import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';
import { placeOf } from '../../site/item.ts';
import { type Stream, isRtsp } from '../../site/model.ts';
import { rtspAddressOf } from '../../site/rtsp-address.ts';
import { RTSP_PORT } from '../../standards/rtp.ts';
import { asName } from '../../text/words.ts';

export const rtspAddressShared: Rule = {
  id: 'rtsp-address-shared',
  severity: 'warning',
  showAfter: 'item',
  summary: 'Two streams have the same RTSP address.',
  why: `A camera tells its streams apart by the address in the request: its port and path. One address gives one stream, so
both names get the same picture, and the loads include a stream that does not exist. The
camera's manual has the \`path\` of each. If it is one stream that several receive, declare it once, with all its
receivers.`,
  source: 'RFC 2326 §3.2 (the address names the stream), from memory',
  check({ site }: RuleContext, report: Report): void {
    const first = new Map<string, Stream>();
    for (const stream of site.streams) {
      const { item, name, source, transport, port = RTSP_PORT, path = '' } = stream;
      if (!isRtsp(transport) || source === undefined) continue;
      const address = `${source}:${rtspAddressOf(stream)}`;
      const other = first.get(address);
      if (other === undefined) {
        first.set(address, stream);
        continue;
      }
      report({
        at: placeOf(item, ['path']),
        message:
          `${asName(other.name)} has the same address at ${asName(source)}, port ${port}, ` +
          `${path === '' ? 'without a path' : `path ${path}`}: both are one stream. Give each its \`path\`, or ` +
          'declare one stream with all receivers.',
        acceptAt: [name],
        // The duplicate then needs no session of its own.
        entails: [stream],
        related: [{ at: placeOf(other.item, ['path']), message: `${asName(other.name)} has the same address` }],
      });
    }
  },
};

export const examples: readonly Example[] = [
  {
    bad: `
streams:
  paddock: {source: paddock-cam, transport: rtsp, port: 554, receivers: [recorder]}
  paddock-small: {source: paddock-cam, transport: rtsp, port: 554, receivers: [kitchen-screen]}
# ^^^^^^^^^^^^^ paddock has the same address at paddock-cam, port 554, without a path: both are
`,
    good: `
streams:
  paddock: {source: paddock-cam, transport: rtsp, port: 554, path: /main, receivers: [recorder]}
  paddock-small: {source: paddock-cam, transport: rtsp, port: 554, path: /small, receivers: [kitchen-screen]}
  yard: {source: yard-cam, transport: rtsp, port: 554, path: /main, receivers: [recorder]}
`,
  },
];
