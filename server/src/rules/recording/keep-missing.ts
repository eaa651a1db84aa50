import { nodeAt } from '../../site/edit.ts';
import { namePlace } from '../../site/item.ts';
import { retentionBoundsOf } from '../../site/retention.ts';
import { bytes, days, asName } from '../../text/words.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';

export const keepMissing: Rule = {
  id: 'keep-missing',
  severity: 'information',
  showAfter: 'item',
  summary: 'A recording does not say how long it is kept.',
  why: `Without \`keep\` a recording grows until the volume is full. Where
people are in the picture, privacy law commonly asks for a time after which it is deleted.`,
  source: 'common practice, no source',
  check({ site, plan }: RuleContext, report: Report): void {
    for (const { recording, volume, bytesPerDay } of plan.storage.recordings) {
      const { item, name, keep } = recording;
      if (keep !== undefined || nodeAt(item, ['keep']) !== undefined || volume === undefined || bytesPerDay === 0)
        continue;
      const { least, most } = retentionBoundsOf(site.policies.retention, name);
      // Where a policy sets a time, the rule retention reports.
      if (least !== undefined || most !== undefined) continue;
      const full = plan.storage.on(volume).daysUntilFullKept;
      report({
        at: namePlace(item),
        message:
          `${asName(name)} grows by ${bytes(bytesPerDay)} a day, and nothing says how long it is ` +
          `kept${full === undefined ? '' : `: ${asName(volume.name)} is full after ${days(full)}`}. Give it \`keep\`.`,
        acceptAt: [name, volume.name],
      });
    }
  },
};

export const examples: readonly Example[] = [
  {
    bad: `
streams:
  paddock: {source: paddock-cam, transport: rtsp, video: {codec: h264, bitrate: 8 Mb/s}, receivers: [recorder]}
volumes:
  archive: {host: recorder, capacity: 8 TB, reserve: 5 %}
recordings:
  paddock: {stream: paddock, volume: archive}
# want 3-10 paddock grows by 86.4 GB a day, and nothing says how long it is kept: archive is full after 88 d
`,
    good: `
streams:
  paddock: {source: paddock-cam, transport: rtsp, video: {codec: h264, bitrate: 8 Mb/s}, receivers: [recorder]}
volumes:
  archive: {host: recorder, capacity: 8 TB, reserve: 5 %}
recordings:
  paddock: {stream: paddock, volume: archive, keep: 14 d}
`,
  },
];
