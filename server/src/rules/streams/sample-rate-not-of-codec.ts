import { LOWEST_SAMPLE_RATE, sampleRates } from '../../standards/audio-sample-rates.ts';
import { fixOf, setValue } from '../../site/edit.ts';
import { placeOf } from '../../site/item.ts';
import { list } from '../../text/words.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';

export const sampleRateNotOfCodec: Rule = {
  id: 'sample-rate-not-of-codec',
  severity: 'warning',
  showAfter: 'item',
  summary: 'Audio has a sample rate that its codec cannot have.',
  why: `Opus, AAC, MPEG audio, AC-3 and G.722 know a few sample rates each, and no codec has fewer than about 8000
samples a second. With another figure, often Hz for kHz, no encoder starts, and the rate of packets is computed for a
stream that does not exist. Correct the sample rate, or the codec.`,
  source:
    'RFC 3551 §4.5.2 and RFC 6716 §2, read; ISO/IEC 11172-3, 13818-3 and 14496-3 and ATSC A/52, from memory, and held ' +
    'against FFmpeg’s encoders',
  check({ site }: RuleContext, report: Report): void {
    for (const { item, name, audio } of site.streams) {
      const rate = audio?.sampleRate;
      if (audio?.codec === undefined || rate === undefined) continue;
      const known = sampleRates(audio.codec)?.rates;
      const can = (value: number): boolean => known?.includes(value) ?? value >= LOWEST_SAMPLE_RATE;
      if (can(rate)) continue;
      const wanted = known === undefined ? '8 kHz or more' : list(known.map(kilohertz), 'or');
      report({
        at: placeOf(item, ['audio', 'sample-rate']),
        message: `${audio.codec} is sampled at ${wanted}: ${name} cannot have ${kilohertz(rate)}. Correct it, or the codec.`,
        acceptAt: [name],
        related: [{ at: placeOf(item, ['audio', 'codec']), message: 'the codec' }],
        // Its bit rate is computed from it.
        entails: [audio],
        fixes: () => {
          const meant = [rate * 1000, rate / 1000].find(can);
          return meant === undefined
            ? []
            : fixOf(`Write ${kilohertz(meant)}`, setValue(item, ['audio', 'sample-rate'], kilohertz(meant)));
        },
      });
    }
  },
};

function kilohertz(rate: number): string {
  return rate < 1000 ? `${rate} Hz` : `${rate / 1000} kHz`;
}

export const examples: readonly Example[] = [
  {
    bad: `
streams:
  paddock: {source: paddock-cam, audio: {codec: aac, bitrate: 96 kb/s, sample-rate: 48 Hz}}
#                                                                                   ^^^^^ cannot have 48 Hz
`,
    fixed: `
streams:
  paddock: {source: paddock-cam, audio: {codec: aac, bitrate: 96 kb/s, sample-rate: 48 kHz}}
`,
  },
  {
    bad: `
streams:
  paddock: {source: paddock-cam, audio: {codec: opus, bitrate: 96 kb/s, sample-rate: 44.1 kHz}}
#                                                                                    ^^^^^^^^ opus is sampled at 8 kHz, 12 kHz, 16 kHz, 24 kHz or 48 kHz: paddock cannot have 44.1 kHz
`,
    good: `
streams:
  paddock: {source: paddock-cam, audio: {codec: opus, bitrate: 96 kb/s, sample-rate: 48 kHz}}
  yard: {source: yard-cam, audio: {codec: l16, sample-rate: 44.1 kHz, channels: 2}}
`,
  },
];
