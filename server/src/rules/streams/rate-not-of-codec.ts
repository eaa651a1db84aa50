import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';
import { audioRates } from '../../standards/audio-rates.ts';
import { fixOf, setValue } from '../../site/edit.ts';
import { placeOf } from '../../site/item.ts';
import { formatQuantity } from '../../text/quantity.ts';
import { bitRate, asName } from '../../text/words.ts';

/** A rate so many times a codec's maximum fits no other codec either; common practice. */
const ABSURD = 20;

export const rateNotOfCodec: Rule = {
  id: 'rate-not-of-codec',
  severity: 'warning',
  showAfter: 'item',
  summary: 'Audio has a bit rate that its codec cannot have.',
  why: `Some codecs have one rate, which follows from the samples: G.711 (\`pcma\`, \`pcmu\`) has 8 bits a sample
and channel, L16 has 16, G.722 has 64 kb/s. The others have a least and a most. With another figure, often kb/s for
Mb/s or the other way round, the loads and the days of footage are computed for a stream that does not exist. Correct
the rate, or the codec, the sample rate or the channels.`,
  source:
    'RFC 3551 §4.5.2, §4.5.11 and §4.5.14 and RFC 6716 §2.1.1, read; ISO/IEC 11172-3, 13818-3 and 14496-3 and ' +
    'ATSC A/52, from memory, and held against FFmpeg’s encoders',
  check({ site }: RuleContext, report: Report): void {
    for (const { item, name, audio } of site.streams) {
      const rate = audio?.rate;
      const range = rate === undefined ? undefined : audioRates(audio?.codec, audio?.sampleRate, audio?.channels);
      if (rate === undefined || range === undefined) continue;
      const { least, most } = range;
      const isWithin = (value: number): boolean => value >= least && value <= most;
      if (isWithin(rate.nominal) && isWithin(rate.peak)) continue;
      const [key, value] = isWithin(rate.nominal)
        ? (['peak-bitrate', rate.peak] as const)
        : (['bitrate', rate.nominal] as const);
      const has = least === most ? `always takes ${bitRate(most)}` : `takes ${bitRate(least)} to ${bitRate(most)}`;
      report({
        at: placeOf(item, ['audio', key]),
        // Such a rate would overload every link on its way.
        severity: value > ABSURD * most ? 'error' : 'warning',
        message: `${audio?.codec} ${has} here: ${asName(name)} cannot have ${bitRate(value)}. Correct the rate, or the codec.`,
        acceptAt: [name],
        related: [{ at: placeOf(item, ['audio', 'codec']), message: 'the codec' }],
        // A consequence of a wrong sample rate, which is reported.
        effects: audio?.sampleRate === undefined ? [] : [audio],
        // The overloads that it causes follow from it.
        entails: audio === undefined ? [] : [audio],
        fixes: () => {
          const meant = least === most ? most : [value / 1000, value * 1000].find(isWithin);
          return meant === undefined ? [] : fixOf(`Set ${exact(meant)}`, setValue(item, ['audio', key], exact(meant)));
        },
      });
    }
  },
};

/** The exact rate as text for the site. */
function exact(rate: number): string {
  return formatQuantity(rate, 'bit-rate');
}

export const examples: readonly Example[] = [
  {
    bad: `
streams:
  paddock: {source: paddock-cam, audio: {codec: pcma, bitrate: 128 kb/s}}
#                                                              ^^^^^^^^ pcma always takes 64 kb/s here: paddock cannot have 128 kb/s. Correct the
`,
    fixed: `
streams:
  paddock: {source: paddock-cam, audio: {codec: pcma, bitrate: 64 kb/s}}
`,
  },
  {
    bad: `
streams:
  aisle: {source: aisle-cam, audio: {codec: aac, sample-rate: 48 kHz, channels: 2, bitrate: 128 Mb/s}}
#                                                                                           ^^^^^^^^ aac takes 4 kb/s to 576 kb/s here: aisle cannot have 128 Mb/s
`,
    fixed: `
streams:
  aisle: {source: aisle-cam, audio: {codec: aac, sample-rate: 48 kHz, channels: 2, bitrate: 128 kb/s}}
`,
  },
  {
    bad: `
streams:
  bell: {source: bell-cam, audio: {codec: mp2, bitrate: 192 b/s}}
#                                                       ^^^^^^^ mp2 takes 32 kb/s to 384 kb/s here
`,
    fixed: `
streams:
  bell: {source: bell-cam, audio: {codec: mp2, bitrate: 192 kb/s}}
`,
  },
];
