import { type Fix, nodeAt, setValue } from '../../site/edit.ts';
import { type Item, placeOf } from '../../site/item.ts';
import type { Stream } from '../../site/model.ts';
import { durationLike } from '../../text/quantity.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';
import { asName } from '../../text/words.ts';

export const segmentKeyframe: Rule = {
  id: 'segment-keyframe',
  severity: 'warning',
  showAfter: 'value',
  summary: "The length of a recording's files is not a multiple of the keyframe interval.",
  why: `A stream that is recorded as it comes can only be cut at a keyframe: a file ends at the first keyframe at or after
its time. Files then differ in length, and all are longer if keyframes are further apart than files should last.
Use a multiple of the keyframe interval.`,
  source: "FFmpeg's documentation of the segment muxer; measured with it",
  check({ site }: RuleContext, report: Report): void {
    for (const { item, name, stream: streamName, segment } of site.recordings) {
      const stream = streamName === undefined ? undefined : site.streamByName.get(streamName);
      const interval = stream === undefined ? undefined : site.media(stream)?.video?.keyframeInterval;
      if (stream === undefined || segment === undefined || segment === 0 || interval === undefined || interval === 0)
        continue;
      if (segment % interval === 0) continue;
      const below = Math.floor(segment / interval) * interval;
      const above = below + interval;
      const like = writtenAt(item, 'segment');
      const lasts = [below, above].filter((length) => length > 0).map((length) => durationLike(length, like));
      const declaring = declaringStream(site.streamByName, stream);
      const every = durationLike(interval, writtenAt(declaring.item, 'video', 'keyframe-interval'));
      report({
        at: placeOf(item, ['segment']),
        message:
          `With a keyframe every ${every}, files of ${asName(name)} last ${lasts.join(' or ')}, not ` +
          `${durationLike(segment, like)}. Use a multiple of ${every}.`,
        acceptAt: [name, stream.name],
        // A consequence of a mistyped interval, which is reported.
        effects: declaring.video === undefined ? [] : [declaring.video],
        related: [
          {
            at: placeOf(declaring.item, ['video', 'keyframe-interval']),
            message: `the keyframe interval of ${asName(declaring.name)}`,
          },
        ],
        fixes: () => {
          const nearest = segment - below < above - segment && below > 0 ? [below, above] : [above, below];
          const texts = nearest.filter((length) => length > 0).map((length) => durationLike(length, like));
          return texts.map((text): Fix => ({
            title: `Make files of ${text}`,
            safe: false,
            edits: [setValue(item, ['segment'], text)],
          }));
        },
      });
    }
  },
};

function writtenAt(item: Item, ...route: readonly string[]): unknown {
  const node = nodeAt(item, route);
  return node?.kind === 'scalar' ? node.value : undefined;
}

/** The stream that declares the keyframe interval: itself, or one that it carries. */
function declaringStream(streams: ReadonlyMap<string, Stream>, stream: Stream): Stream {
  const seen = new Set<Stream>();
  let current = stream;
  while (current.video?.keyframeInterval === undefined && current.carries !== undefined && !seen.has(current)) {
    seen.add(current);
    current = streams.get(current.carries) ?? current;
  }
  return current;
}

export const examples: readonly Example[] = [
  {
    bad: `
streams:
  paddock: {source: paddock-cam, video: {codec: h264, bitrate: 6 Mb/s, keyframe-interval: 3 s}}
recordings:
  paddock: {stream: paddock, volume: archive, segment: 4 s}
#                                                      ^^^ With a keyframe every 3 s, files of paddock last 3 s or 6 s, not 4 s
`,
    fixed: `
streams:
  paddock: {source: paddock-cam, video: {codec: h264, bitrate: 6 Mb/s, keyframe-interval: 3 s}}
recordings:
  paddock: {stream: paddock, volume: archive, segment: 3 s}
`,
  },
  {
    bad: `
streams:
  paddock: {source: paddock-cam, video: {codec: h264, bitrate: 6 Mb/s, keyframe-interval: 10 s}}
recordings:
  paddock: {stream: paddock, volume: archive, segment: 4 s}
#                                                      ^^^ With a keyframe every 10 s, files of paddock last 10 s, not 4 s
`,
    fixed: `
streams:
  paddock: {source: paddock-cam, video: {codec: h264, bitrate: 6 Mb/s, keyframe-interval: 10 s}}
recordings:
  paddock: {stream: paddock, volume: archive, segment: 10 s}
`,
  },
];
