import { fixOf, remove, setValue } from '../../site/edit.ts';
import { placeOf } from '../../site/item.ts';
import { channelAt, channelFrequency as frequencyOf, isOnChannel } from '../../standards/television/channel-plan.ts';
import { megahertz } from '../../text/radio-words.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';

export const channelFrequency: Rule = {
  id: 'channel-frequency',
  severity: 'error',
  showAfter: 'value',
  summary: 'Channel and frequency of a multiplex disagree, or the plan has no such channel.',
  why: `One of them is a slip, and a receiver that is tuned by it finds nothing. The site's \`channel-plan\` says where a
channel is; transmitters may be moved from there by a small offset.`,
  source: 'the grids that transmitters are on, by scan tables of a distribution',
  check({ site }: RuleContext, report: Report): void {
    for (const { item, name, channel, frequency } of site.multiplexes) {
      if (channel === undefined) continue;
      const centre = frequencyOf(site.channelPlan, channel);
      if (centre === undefined) {
        report({
          at: placeOf(item, ['channel']),
          message: `${site.channelPlan} has no channel ${channel}. Correct it, or the site's channel-plan.`,
          acceptAt: [name],
        });
      } else if (frequency !== undefined && !isOnChannel(site.channelPlan, channel, frequency)) {
        const other = channelAt(site.channelPlan, frequency);
        report({
          at: placeOf(item, ['frequency']),
          message:
            `Channel ${channel} is at ${megahertz(centre)}, and ${megahertz(frequency)} is ` +
            `${other === undefined ? 'no channel' : `channel ${other}`}. Correct one of them.`,
          acceptAt: [name],
          related: [{ at: placeOf(item, ['channel']), message: 'its channel' }],
          fixes: () => [
            ...(other === undefined
              ? []
              : fixOf(`Make it channel ${other}`, setValue(item, ['channel'], String(other)))),
            ...fixOf('Remove the frequency', remove(item, ['frequency'])),
          ],
        });
      }
    }
  },
};

export const examples: readonly Example[] = [
  {
    bad: `
multiplexes:
  mux-a: {system: dvb-t, channel: 46, frequency: 682 MHz, modulation: 64qam, code-rate: 2/3, guard-interval: 1/32}
#                                                ^^^^^^^ Channel 46 is at 674 MHz, and 682 MHz is channel 47. Correct one of them.
`,
    fixed: `
multiplexes:
  mux-a: {system: dvb-t, channel: 47, frequency: 682 MHz, modulation: 64qam, code-rate: 2/3, guard-interval: 1/32}
`,
  },
];
