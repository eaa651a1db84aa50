import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';
import { placeOf } from '../../site/item.ts';
import { SECOND } from '../../standards/time-units.ts';
import { durationLike } from '../../text/quantity.ts';
import { textAt } from '../../text/syntax.ts';
import { asName } from '../../text/words.ts';

export const keyframeBelowFrame: Rule = {
  id: 'keyframe-below-frame',
  severity: 'warning',
  showAfter: 'item',
  summary: 'The keyframe interval is shorter than a frame.',
  why: `There cannot be more keyframes than frames. It is a slip, most likely in the unit, and files are cut and footage is
joined by it. Cameras send a keyframe every one to four seconds.`,
  source: 'Arithmetic; usual intervals are common practice',
  check({ site }: RuleContext, report: Report): void {
    for (const { item, name, video } of site.streams) {
      const { keyframeInterval, frameRate } = video ?? {};
      if (keyframeInterval === undefined || frameRate === undefined || frameRate === 0) continue;
      const frame = SECOND / frameRate;
      if (keyframeInterval >= Math.floor(frame)) continue;
      const interval = durationLike(keyframeInterval, textAt(item.data, ['video', 'keyframe-interval']));
      report({
        at: placeOf(item, ['video', 'keyframe-interval']),
        message:
          `At ${frameRate} frames a second a frame of ${asName(name)} lasts ${Math.round(frame)} ms, so there cannot be a ` +
          `keyframe every ${interval}. Is its unit right?`,
        acceptAt: [name],
        related: [{ at: placeOf(item, ['video', 'frame-rate']), message: 'the frame rate' }],
      });
    }
  },
};

export const examples: readonly Example[] = [
  {
    bad: `
streams:
  paddock: {source: paddock-cam, video: {codec: h264, frame-rate: 20, bitrate: 6 Mb/s, keyframe-interval: 2 ms}}
#                                                                                                         ^^^^ At 20 frames a second a frame of paddock lasts 50 ms, so there cannot be a keyframe every 2 ms
`,
    good: `
streams:
  paddock: {source: paddock-cam, video: {codec: h264, frame-rate: 20, bitrate: 6 Mb/s, keyframe-interval: 2 s}}
  yard: {source: yard-cam, video: {codec: mjpeg, frame-rate: 30, bitrate: 20 Mb/s, keyframe-interval: 33 ms}}
`,
  },
];
