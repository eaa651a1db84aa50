import { headOf } from '../../site/item.ts';
import { televisionEnds } from '../../standards/television/channel-plan.ts';
import { megahertz } from '../../text/radio-words.ts';
import { skyFrequency } from '../../site/television/channel.ts';
import { isSatellite } from '../../standards/television/system.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';

export const mobileBand: Rule = {
  id: 'mobile-band',
  severity: 'warning',
  summary: 'A terrestrial multiplex lies where mobile telephones are today.',
  why: `Television has left these frequencies in most countries, so the channel is likely an old one; where it is still on
air, telephones and their masts are stronger than it. Read the broadcaster's table again, and put a filter in front of
the first amplifier.`,
  source: 'the 700 MHz and 600 MHz bands: 3GPP band 28 by a page that quotes it, band 71 from memory; countries differ',
  check({ site }: RuleContext, report: Report): void {
    const end = televisionEnds(site.channelPlan);
    if (end === undefined) return;
    for (const multiplex of site.multiplexes) {
      const { item, name, system } = multiplex;
      const frequency = skyFrequency(site, multiplex);
      // Cable is on a coax of its own.
      if (frequency === undefined || frequency < end || system === 'dvb-c' || system === 'j83b') continue;
      if (system === undefined || isSatellite(system)) continue;
      report({
        at: headOf(item),
        message:
          `${name} is at ${megahertz(frequency)}, and television ends at ${megahertz(end)} where ${site.channelPlan} ` +
          'holds: mobile telephones are there. Check the channel, and filter in front of the first amplifier.',
        about: [name],
      });
    }
  },
};

export const examples: readonly Example[] = [
  {
    bad: `
multiplexes:
  mux-c: {system: dvb-t, channel: 52, modulation: 64qam, code-rate: 2/3, guard-interval: 1/32}
# ^^^^^ mux-c is at 722 MHz, and television ends at 694 MHz where region-1 holds
`,
    good: `
multiplexes:
  mux-c: {system: dvb-t, channel: 44, modulation: 64qam, code-rate: 2/3, guard-interval: 1/32}
`,
  },
];
