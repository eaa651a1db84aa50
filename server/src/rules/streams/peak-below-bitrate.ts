import { fixOf, setValue } from '../../site/edit.ts';
import { type Item, placeOf } from '../../site/item.ts';
import type { MediaRate } from '../../site/model.ts';
import type { KeyPath } from '../../text/syntax.ts';
import { bitRate, asName } from '../../text/words.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';

const PARTS = ['video', 'audio'] as const;

export const peakBelowBitrate: Rule = {
  id: 'peak-below-bitrate',
  severity: 'warning',
  showAfter: 'value',
  summary: 'The peak of a stream or a service is below its average.',
  why: `The peak is the most that the encoder sends, so it is at least the bit rate. Links are judged by the peak and
disks by the average: with the two mixed up, a link that is too slow looks fine. Correct one of them, or leave the
peak out, which is then taken as the bit rate.`,
  source: 'An average lies below the greatest value: arithmetic.',
  check({ site }: RuleContext, report: Report): void {
    for (const { item, name, video, audio } of site.streams) {
      const parts = { video, audio };
      for (const part of PARTS)
        tell({ item, of: `The ${part} of ${asName(name)}`, rate: parts[part]?.rate, keys: keysIn(part) }, report);
    }
    for (const { item, name, rate, peakRate } of site.services)
      if (rate !== undefined && peakRate !== undefined)
        tell({ item, of: name, rate: { nominal: rate, peak: peakRate }, keys: OF_SERVICE }, report);
  },
};

interface Rated {
  readonly item: Item;
  readonly of: string;
  readonly rate: Pick<MediaRate, 'nominal' | 'peak'> | undefined;
  /** The routes of both keys. */
  readonly keys: { readonly average: KeyPath; readonly peak: KeyPath };
}

const OF_SERVICE = { average: ['rate'], peak: ['peak-rate'] } as const;

function keysIn(part: string): Rated['keys'] {
  return { average: [part, 'bitrate'], peak: [part, 'peak-bitrate'] };
}

function tell({ item, of, rate, keys }: Rated, report: Report): void {
  if (rate === undefined || rate.peak >= rate.nominal) return;
  const [average, peak] = [placeOf(item, keys.average), placeOf(item, keys.peak)];
  report({
    at: peak,
    message:
      `${of} peaks at ${bitRate(rate.peak)}, less than the ${bitRate(rate.nominal)} that it has on average. Correct ` +
      'one of them.',
    acceptAt: [item.name],
    related: [{ at: average, message: `${bitRate(rate.nominal)} on average` }],
    fixes: () =>
      fixOf(
        'Swap the two',
        setValue(item, keys.average, peak.piece.text.slice(peak.start, peak.end)),
        setValue(item, keys.peak, average.piece.text.slice(average.start, average.end)),
      ),
  });
}

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
  {
    bad: `
multiplexes:
  mux-a: {system: dvb-t, channel: 46, modulation: 64qam, code-rate: 2/3, guard-interval: 1/32}
services:
  news: {multiplex: mux-a, rate: 7 Mb/s, peak-rate: 4.2 Mb/s}
#                                                   ^^^^^^^^ news peaks at 4.2 Mb/s, less than the 7 Mb/s that it has on average
`,
    good: `
multiplexes:
  mux-a: {system: dvb-t, channel: 46, modulation: 64qam, code-rate: 2/3, guard-interval: 1/32}
services:
  news: {multiplex: mux-a, rate: 4.2 Mb/s, peak-rate: 7 Mb/s}
`,
    fixed: `
multiplexes:
  mux-a: {system: dvb-t, channel: 46, modulation: 64qam, code-rate: 2/3, guard-interval: 1/32}
services:
  news: {multiplex: mux-a, rate: 4.2 Mb/s, peak-rate: 7 Mb/s}
`,
  },
];
