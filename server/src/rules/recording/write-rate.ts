import { WRITE_WARN } from '../../site/limits.ts';
import { placeOf } from '../../site/item.ts';
import { byteRate, count, percentOver, threshold, asName } from '../../text/words.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';

const WHOLE = 10_000;

export const writeRate: Rule = {
  id: 'write-rate',
  severity: 'error',
  summary: 'Recordings are written faster than the volume takes them.',
  why: `A volume that cannot keep up drops footage. The sum is all its recordings at their peak at once,
against \`sustained-write\`. Many files at a time, a rebuild and somebody watching recordings all use the same
disks, so it warns above 70 %.`,
  source: 'Bit rate / 8. The 70 % are common practice, no source.',
  check({ plan }: RuleContext, report: Report): void {
    for (const { volume, writeRate, recordings } of plan.storage.volumes) {
      const { peak } = writeRate;
      const { item, name, sustainedWrite } = volume;
      if (sustainedWrite === undefined || sustainedWrite === 0 || peak * 10_000 <= sustainedWrite * WRITE_WARN)
        continue;
      const isOver = peak > sustainedWrite;
      report({
        at: placeOf(item, ['sustained-write']),
        severity: isOver ? 'error' : 'warning',
        message:
          `${count(recordings.length, 'recording')} ${recordings.length === 1 ? 'writes' : 'write'} ` +
          `${byteRate(peak)} to ${asName(name)} at peak, ${percentOver(peak, sustainedWrite, isOver ? WHOLE : WRITE_WARN)} of the ` +
          `${byteRate(sustainedWrite)} that it sustains${isOver ? '' : ` and more than ${threshold(WRITE_WARN)}`}. Lower ` +
          'bit rates, or take faster disks.',
        acceptAt: [name],
        effects: [writeRate],
      });
    }
  },
};

export const examples: readonly Example[] = [
  {
    bad: `
streams:
  paddock: {source: paddock-cam, transport: rtsp, video: {codec: h264, bitrate: 6 Mb/s, peak-bitrate: 9 Mb/s}, receivers: [recorder]}
volumes:
  archive: {host: recorder, capacity: 2 TB, sustained-write: 1 MB/s}
#                                                            ^^^^^^ 1 recording writes 1.13 MB/s to archive at peak, 113 % of the 1 MB/s that it sustains
recordings:
  paddock: {stream: paddock, volume: archive, keep: 14 d}
`,
    good: `
streams:
  paddock: {source: paddock-cam, transport: rtsp, video: {codec: h264, bitrate: 6 Mb/s, peak-bitrate: 9 Mb/s}, receivers: [recorder]}
volumes:
  archive: {host: recorder, capacity: 2 TB, sustained-write: 120 MB/s}
recordings:
  paddock: {stream: paddock, volume: archive, keep: 14 d}
`,
  },
];
