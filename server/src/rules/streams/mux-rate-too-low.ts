import { multiplexOf } from '../../network/rates.ts';
import { fixOf, setValue } from '../../site/edit.ts';
import { placeOf } from '../../site/item.ts';
import { bitRate, asName } from '../../text/words.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';

export const muxRateTooLow: Rule = {
  id: 'mux-rate-too-low',
  severity: 'error',
  showAfter: 'item',
  summary: 'A transport stream has a lower rate than its contents need.',
  why: `The multiplex carries video and audio with the headers of their packets, tables and clock references. A constant
rate below that makes the multiplexer drop or delay pictures. It must hold the peak, not only the average: below the
peak it is a warning, below the average an error.`,
  source: "ISO/IEC 13818-1 §2.4.3, from memory; the sum was held against FFmpeg's multiplexer",
  check({ site }: RuleContext, report: Report): void {
    for (const stream of site.streams) {
      const { item, name, muxRate, transport } = stream;
      const media = site.media(stream);
      if (muxRate === undefined || media === undefined || (transport !== 'ts-udp' && transport !== 'ts-rtp')) continue;
      const needed = multiplexOf({ ...stream, muxRate: undefined }, media);
      if (needed.peak <= muxRate) continue;
      const short = needed.nominal > muxRate;
      const enough = `${Math.ceil(needed.peak / 100_000) / 10} Mb/s`;
      report({
        at: placeOf(item, ['mux-rate']),
        severity: short ? 'error' : 'warning',
        message:
          `${asName(name)} needs ${bitRate(short ? needed.nominal : needed.peak)}${short ? '' : ' at peak'} with headers and ` +
          `tables, and its mux-rate is ${bitRate(muxRate)}. Set it to ${enough} or more, or lower the bitrate.`,
        acceptAt: [name],
        fixes: () => fixOf(`Set the mux-rate to ${enough}`, setValue(item, ['mux-rate'], enough)),
      });
    }
  },
};

export const examples: readonly Example[] = [
  {
    bad: `
streams:
  paddock-tv: {source: recorder, transport: ts-rtp, port: 5004, mux-rate: 6 Mb/s, video: {bitrate: 6 Mb/s}}
#                                                                         ^^^^^^ paddock-tv needs 6.18 Mb/s with headers and tables, and its mux-rate is 6 Mb/s
`,
    good: `
streams:
  paddock-tv: {source: recorder, transport: ts-rtp, port: 5004, mux-rate: 6.6 Mb/s, video: {bitrate: 6 Mb/s}}
`,
    fixed: `
streams:
  paddock-tv: {source: recorder, transport: ts-rtp, port: 5004, mux-rate: 6.2 Mb/s, video: {bitrate: 6 Mb/s}}
`,
  },
];
