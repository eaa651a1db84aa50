import { fixOf, setValue } from '../../site/edit.ts';
import { placeOf } from '../../site/item.ts';
import { bitRate } from '../../text/words.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';

const PARTS = ['video', 'audio'] as const;

export const peakBelowBitrate: Rule = {
  id: 'peak-below-bitrate',
  severity: 'warning',
  due: 'value',
  summary: "A stream's peak rate is below its average.",
  why: `The peak is the most that the encoder sends, so it is at least the bit rate. Links are judged by the peak and
disks by the average: with the two mixed up, a link that is too slow looks fine. Correct one of them, or leave the
peak out, which is then taken as the bit rate.`,
  source: 'An average lies below the greatest value: arithmetic.',
  check({ site }: RuleContext, report: Report): void {
    for (const stream of site.streams) {
      for (const part of PARTS) {
        const rate = stream[part]?.rate;
        if (rate === undefined || rate.peak >= rate.nominal) continue;
        const { item, name } = stream;
        const [average, peak] = [placeOf(item, [part, 'bitrate']), placeOf(item, [part, 'peak-bitrate'])];
        report({
          at: peak,
          message:
            `The ${part} of ${name} peaks at ${bitRate(rate.peak)}, less than the ${bitRate(rate.nominal)} that it ` +
            'has on average. Correct one of them.',
          about: [name],
          related: [{ at: average, message: `${bitRate(rate.nominal)} on average` }],
          fixes: () =>
            fixOf(
              'Swap the two',
              setValue(item, [part, 'bitrate'], peak.piece.text.slice(peak.start, peak.end)),
              setValue(item, [part, 'peak-bitrate'], average.piece.text.slice(average.start, average.end)),
            ),
        });
      }
    }
  },
};

export const examples: readonly Example[] = [
  {
    bad: `
streams:
  paddock: {source: paddock-cam, transport: rtsp, video: {codec: h264, bitrate: 9 Mb/s, peak-bitrate: 6 Mb/s}}
#                                                                                                     ^^^^^^ The video of paddock peaks at 6 Mb/s, less than the 9 Mb/s that it has on average
`,
    good: `
streams:
  paddock: {source: paddock-cam, transport: rtsp, video: {codec: h264, bitrate: 6 Mb/s, peak-bitrate: 6 Mb/s}}
`,
    fixed: `
streams:
  paddock: {source: paddock-cam, transport: rtsp, video: {codec: h264, bitrate: 6 Mb/s, peak-bitrate: 9 Mb/s}}
`,
  },
];
