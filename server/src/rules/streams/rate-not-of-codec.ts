import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';
import { fixOf, setValue } from '../../site/edit.ts';
import { placeOf } from '../../site/item.ts';
import type { Audio } from '../../site/model.ts';
import { bitRate } from '../../text/words.ts';

export const rateNotOfCodec: Rule = {
  id: 'rate-not-of-codec',
  severity: 'warning',
  due: 'item',
  summary: 'Audio has a bit rate that its codec cannot have.',
  why: `Some codecs have one rate, which follows from the samples: G.711 (\`pcma\`, \`pcmu\`) has 8 bits a sample
and channel, G.722 has 64 kb/s. With another figure the loads and the days of footage are computed for a stream
that does not exist. Correct the rate, or the codec, the sample rate or the channels.`,
  source: 'RFC 3551 §4.5.2 and §4.5.14, read',
  check({ site }: RuleContext, report: Report): void {
    for (const { item, name, audio } of site.streams) {
      const rate = audio?.rate;
      const only = audio === undefined ? undefined : rateOf(audio);
      if (rate === undefined || only === undefined || (rate.nominal === only && rate.peak === only)) continue;
      const key = rate.nominal === only ? 'peak-bitrate' : 'bitrate';
      report({
        at: placeOf(item, ['audio', key]),
        message:
          `${audio?.codec} always takes ${bitRate(only)} here: ${name} cannot have ` +
          `${bitRate(rate.nominal === only ? rate.peak : rate.nominal)}. Correct the rate, or the codec.`,
        about: [name],
        related: [{ at: placeOf(item, ['audio', 'codec']), message: 'the codec' }],
        fixes: () => fixOf(`Set ${bitRate(only)}`, setValue(item, ['audio', key], bitRate(only))),
      });
    }
  },
};

/** bit/s of a codec that has one rate alone, as far as the stream itself says what it takes. */
function rateOf({ codec, sampleRate = 8000, channels = 1 }: Audio): number | undefined {
  if (codec === 'pcma' || codec === 'pcmu') return 8 * sampleRate * channels;
  if (codec === 'g722') return 64_000 * channels;
  return undefined;
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
];
