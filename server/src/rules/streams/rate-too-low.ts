import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';
import { fixOf, setValue } from '../../site/edit.ts';
import { placeOf } from '../../site/item.ts';
import type { Video } from '../../site/model.ts';
import { bitRate, asName } from '../../text/words.ts';

/**
 * Bits per pixel of each picture that no encoder goes below: 0.02 to 0.2 are usual, and 0.5 to 2 for MJPEG, which
 * encodes each picture by itself. A unit a thousand times too small falls below. Common practice, no source.
 */
const LEAST = 0.0005;
const LEAST_OF_MJPEG = 0.005;
/** bit/s, where the size of the picture is not declared. Common practice, no source. */
const LEAST_OF_ANY = 16_000;

export const rateTooLow: Rule = {
  id: 'rate-too-low',
  severity: 'warning',
  showAfter: 'item',
  summary: 'Video has a bit rate too low for any picture.',
  why: `The rate is far below what any encoder needs for video of that size, most often kb/s in place of Mb/s.
Loads of links and days of footage are computed from it, so a disk that looks half empty is full within days. Correct
the rate.`,
  source: 'Common practice, no source',
  check({ site }: RuleContext, report: Report): void {
    for (const { item, name, video } of site.streams) {
      const rate = video?.rate;
      if (video === undefined || rate === undefined || rate.nominal <= 0) continue;
      const least = leastOf(video);
      if (rate.nominal >= least) continue;
      const of = video.width === undefined ? '' : ` of ${video.width}x${video.height}`;
      report({
        at: placeOf(item, ['video', 'bitrate']),
        message:
          `${asName(name)} has ${bitRate(rate.nominal)}, and no encoder gets video${of} below ${bitRate(least)}. ` +
          'Correct the rate.',
        acceptAt: [name],
        fixes: () => {
          const meant = 1000 * rate.nominal;
          return fixOf(`Set ${bitRate(meant)}`, setValue(item, ['video', 'bitrate'], bitRate(meant)));
        },
      });
    }
  },
};

/** bit/s, rounded up to whole kb/s. */
function leastOf({ codec, width, height, frameRate }: Video): number {
  if (width === undefined || height === undefined || frameRate === undefined) return LEAST_OF_ANY;
  const bits = width * height * frameRate * (codec === 'mjpeg' ? LEAST_OF_MJPEG : LEAST);
  return Math.ceil(bits / 1000) * 1000;
}

export const examples: readonly Example[] = [
  {
    bad: `
streams:
  paddock: {source: paddock-cam, video: {codec: h265, size: 3840x2160, frame-rate: 25, bitrate: 6 kb/s}}
#                                                                                               ^^^^^^ paddock has 6 kb/s, and no encoder gets video of 3840x2160 below 104 kb/s
`,
    fixed: `
streams:
  paddock: {source: paddock-cam, video: {codec: h265, size: 3840x2160, frame-rate: 25, bitrate: 6 Mb/s}}
`,
  },
  {
    bad: `
streams:
  yard: {source: yard-cam, video: {codec: h264, bitrate: 4 kb/s}}
#                                                        ^^^^^^ yard has 4 kb/s, and no encoder gets video below 16 kb/s
`,
    good: `
streams:
  yard: {source: yard-cam, video: {codec: h264, bitrate: 64 kb/s}}
  hen-house: {source: hen-cam, video: {codec: h265, size: 1920x1080, frame-rate: 1, bitrate: 20 kb/s}}
`,
  },
];
