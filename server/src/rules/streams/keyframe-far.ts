import { placeOf } from '../../site/item.ts';
import { SECOND } from '../../standards/time-units.ts';
import { durationLike } from '../../text/quantity.ts';
import { textAt } from '../../text/syntax.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';

const LONGEST = 20 * SECOND;

export const keyframeFar: Rule = {
  id: 'keyframe-far',
  severity: 'warning',
  showAfter: 'value',
  summary: 'Keyframes are so far apart that a screen stays dark for long.',
  why: `A screen shows nothing before the first keyframe, after a lost packet the picture stays broken until the next, and
files are cut there alone. Often it is a slip in the unit, or frames written as seconds. Cameras send a keyframe every
one to four seconds; up to 20 s is not reported.`,
  source: 'common practice, no source',
  check({ site }: RuleContext, report: Report): void {
    for (const { item, name, video } of site.streams) {
      const interval = video?.keyframeInterval;
      if (interval === undefined || interval <= LONGEST) continue;
      const words = durationLike(interval, textAt(item.data, ['video', 'keyframe-interval']));
      report({
        at: placeOf(item, ['video', 'keyframe-interval']),
        message:
          `With a keyframe every ${words} a screen that turns to ${name} stays dark for up to ${words}, and files are ` +
          'cut no finer. Let the encoder send one every 1 s to 4 s; is the unit right?',
        acceptAt: [name],
        // Files end at keyframes, so they are longer too.
        entails: video === undefined ? [] : [video],
      });
    }
  },
};

export const examples: readonly Example[] = [
  {
    bad: `
streams:
  paddock: {source: paddock-cam, video: {codec: h264, frame-rate: 20, bitrate: 6 Mb/s, keyframe-interval: 40 s}}
#                                                                                                         ^^^^ With a keyframe every 40 s a screen that turns to paddock stays dark for up to 40 s
`,
    good: `
streams:
  paddock: {source: paddock-cam, video: {codec: h264, frame-rate: 20, bitrate: 6 Mb/s, keyframe-interval: 2 s}}
  yard: {source: yard-cam, video: {codec: h264, frame-rate: 20, bitrate: 6 Mb/s, keyframe-interval: 10 s}}
`,
  },
];
