import { fixOf, nameText, putElement } from '../../site/edit.ts';
import { namePlace, placeOf } from '../../site/item.ts';
import type { Stream } from '../../site/model.ts';
import { senderOf } from '../../site/sender.ts';
import { grouped } from '../../grouped.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';
import { asName } from '../../text/words.ts';

export const carriedNotReceived: Rule = {
  id: 'carried-not-received',
  severity: 'error',
  showAfter: 'item',
  summary: 'A device sends on a stream that it does not receive.',
  why: `What a device sends on must reach it first, and loads a link on the way. Until the device is among the receivers, that
load is missing from every figure. Add it to the receivers of the stream that it carries.`,
  source: 'common practice, no source',
  check({ site }: RuleContext, report: Report): void {
    const lacking = site.streams.flatMap((stream): Lacking[] => {
      const { source, carries } = stream;
      const carried = carries === undefined ? undefined : site.streamByName.get(carries);
      if (carried?.source === undefined || source === undefined || !site.deviceByName.has(source)) return [];
      if (senderOf(site, carried)?.name === source || carried.receivers.includes(source)) return [];
      return [{ stream, source, carried }];
    });
    // A device that does not receive the stream can neither re-send nor record it: one finding for all.
    for (const [first, ...others] of grouped(lacking, ({ source, carried }) => `${source} ${carried.name}`).values()) {
      if (first === undefined) continue;
      const { stream, source, carried } = first;
      report({
        at: placeOf(stream.item, ['carries']),
        message:
          `${asName(source)} does not receive ${asName(carried.name)}, so it has nothing to send on. Add ${asName(source)} to the receivers ` +
          `of ${asName(carried.name)}.`,
        acceptAt: [stream.name, carried.name, ...others.map((other) => other.stream.name)],
        related: [
          { at: namePlace(carried.item), message: `the stream that ${asName(stream.name)} carries` },
          ...others.map((other) => ({
            at: placeOf(other.stream.item, ['carries']),
            message: `${asName(other.stream.name)} carries it too`,
          })),
        ],
        // A misspelled receiver may be the device.
        effects: [stream, ...others.map((other) => other.stream)],
        entails: site.recordings.filter(
          (recording) =>
            recording.stream === carried.name && site.volumeByName.get(recording.volume ?? '')?.host === source,
        ),
        fixes: () =>
          fixOf(
            `Add ${asName(source)} to the receivers of ${asName(carried.name)}`,
            putElement(carried.item, 'receivers', nameText(source)),
          ),
      });
    }
  },
};

interface Lacking {
  readonly stream: Stream;
  readonly source: string;
  readonly carried: Stream;
}

export const examples: readonly Example[] = [
  {
    bad: `
devices:
  recorder: {kind: server}
streams:
  paddock: {source: paddock-cam, transport: rtsp, port: 554, receivers: [kitchen-screen]}
  paddock-live: {source: recorder, carries: paddock, transport: rtp, port: 5004, group: 239.192.20.31}
#                                           ^^^^^^^ recorder does not receive paddock
`,
    good: `
devices:
  recorder: {kind: server}
streams:
  paddock: {source: paddock-cam, transport: rtsp, port: 554, receivers: [recorder]}
  paddock-live: {source: recorder, carries: paddock, transport: rtp, port: 5004, group: 239.192.20.31}
  paddock-wall: {source: recorder, carries: paddock-live, transport: rtp, port: 5004, group: 239.192.20.32}
`,
    fixed: `
devices:
  recorder: {kind: server}
streams:
  paddock: {source: paddock-cam, transport: rtsp, port: 554, receivers: [kitchen-screen, recorder]}
  paddock-live: {source: recorder, carries: paddock, transport: rtp, port: 5004, group: 239.192.20.31}
`,
  },
];
