import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';
import { placeOf } from '../../site/item.ts';
import { isOutsideTransportStream } from '../../standards/transport-stream.ts';
import { asName } from '../../text/words.ts';

export const transportCodec: Rule = {
  id: 'transport-codec',
  severity: 'error',
  showAfter: 'item',
  summary: "A transport stream cannot carry one of the stream's codecs.",
  why: `A transport stream marks each of its parts with a stream type, and there is none for G.711, G.722, MJPEG and VP9: no
receiver could decode them. Send the stream by rtp or rtsp, or encode the sound as AAC.`,
  source: 'ISO/IEC 13818-1 table 2-34, from memory',
  check({ site }: RuleContext, report: Report): void {
    for (const stream of site.streams) {
      const { item, name, transport } = stream;
      if (transport !== 'ts-udp' && transport !== 'ts-rtp') continue;
      const { video, audio } = site.media(stream);
      const codec = [video?.codec, audio?.codec].find(isOutsideTransportStream);
      if (codec === undefined) continue;
      report({
        at: placeOf(item, ['transport']),
        message:
          `A transport stream cannot carry ${codec}, so nobody can decode ${asName(name)}. Send it as rtp, or encode it ` +
          `as ${codec === video?.codec ? 'h264' : 'aac'}.`,
        acceptAt: [name],
      });
    }
  },
};

export const examples: readonly Example[] = [
  {
    bad: `
streams:
  paddock-live: {source: recorder, transport: ts-udp, port: 5004, group: 239.255.20.31, video: {codec: h264}, audio: {codec: pcma}}
#                                             ^^^^^^ A transport stream cannot carry pcma
`,
    good: `
streams:
  paddock-live: {source: recorder, transport: ts-udp, port: 5004, group: 239.255.20.31, video: {codec: h264}, audio: {codec: aac}}
  gate-live: {source: recorder, transport: rtp, port: 5006, group: 239.255.20.32, video: {codec: h264}, audio: {codec: pcma}}
`,
  },
];
