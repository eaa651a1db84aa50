import { fixOf, remove } from '../../site/edit.ts';
import { placeOf } from '../../site/item.ts';
import { receiverKeyPath } from '../../site/receiver.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';
import { asName } from '../../text/words.ts';

export const receivesItself: Rule = {
  id: 'receives-itself',
  severity: 'warning',
  showAfter: 'value',
  summary: 'The source of a stream is among its own receivers.',
  why: `A device already has what it sends, so another one was probably meant, which gets nothing until it is named. A server
that records or sends on its own stream is rightly among its receivers.`,
  source: 'common practice, no source',
  check({ site }: RuleContext, report: Report): void {
    for (const stream of site.streams) {
      const { item, name, source, receivers } = stream;
      if (source === undefined || !receivers.includes(source)) continue;
      const isUsed =
        site.recordings.some(
          (recording) => recording.stream === name && site.volumeByName.get(recording.volume ?? '')?.host === source,
        ) || site.streams.some((other) => other.carries === name && other.source === source);
      if (isUsed) continue;
      const keyPath = receiverKeyPath(stream, source);
      report({
        at: placeOf(item, keyPath),
        message:
          `${asName(source)} is the source of ${asName(name)}, and neither records it nor sends it on, so it need not receive it. Name ` +
          'the device that was meant, or take it out.',
        acceptAt: [name, source],
        fixes: () => fixOf(`Take ${asName(source)} out of the receivers`, remove(item, keyPath)),
      });
    }
  },
};

export const examples: readonly Example[] = [
  {
    bad: `
devices:
  paddock-cam: {kind: camera}
  recorder: {kind: server}
streams:
  paddock: {source: paddock-cam, transport: rtsp, port: 554, video: {codec: h264, bitrate: 6 Mb/s}, receivers: [recorder, paddock-cam]}
#                                                                                                                         ^^^^^^^^^^^ paddock-cam is the source of paddock, and neither records it nor sends it on
`,
    fixed: `
devices:
  paddock-cam: {kind: camera}
  recorder: {kind: server}
streams:
  paddock: {source: paddock-cam, transport: rtsp, port: 554, video: {codec: h264, bitrate: 6 Mb/s}, receivers: [recorder]}
`,
  },
];
