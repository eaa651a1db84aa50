import { placeOf } from '../../site/item.ts';
import { bandsOf } from '../../standards/television/bands.ts';
import { isSatellite } from '../../standards/television/system.ts';
import { megahertz } from '../../text/radio-words.ts';
import { list, asName } from '../../text/words.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';

export const frequencyOutOfBand: Rule = {
  id: 'frequency-out-of-band',
  severity: 'error',
  showAfter: 'item',
  summary: 'A multiplex has a frequency at which its system is not sent.',
  why: `A digit is missing or too many, or the unit is wrong. Of a satellite it is the frequency of the transponder in the
sky, as its operator lists it, not the first intermediate frequency that the LNB puts on the coax: that is computed.`,
  source: 'Radio Regulations of the ITU, Article 5, from memory',
  check({ site }: RuleContext, report: Report): void {
    for (const { item, name, system, channel, frequency } of site.multiplexes) {
      // A frequency beside a channel is compared with it by another rule.
      if (system === undefined || frequency === undefined || channel !== undefined) continue;
      const bands = bandsOf(system);
      if (bands.some(({ from, to }) => frequency >= from && frequency <= to)) continue;
      const where = list(
        bands.map(({ from, to }) => `${megahertz(from)} to ${megahertz(to)}`),
        'or',
      );
      report({
        at: placeOf(item, ['frequency']),
        message:
          `${system} is sent at ${where}, and ${asName(name)} is declared at ${megahertz(frequency)}. Correct the frequency` +
          `${isSatellite(system) ? ': it is that of the transponder, not that on the coax' : ''}.`,
        acceptAt: [name],
        related: [{ at: placeOf(item, ['system']), message: 'its system' }],
      });
    }
  },
};

export const examples: readonly Example[] = [
  {
    bad: `
multiplexes:
  sat-1: {system: dvb-s2, frequency: 1126 MHz, polarisation: vertical, symbol-rate: 27.5 MBd, modulation: 8psk, code-rate: 2/3}
#                                    ^^^^^^^^ dvb-s2 is sent at 3400 MHz to 4200 MHz, 10700 MHz to 12750 MHz or 17300 MHz to 21200 MHz, and sat-1 is declared at 1126 MHz
  mux-a: {system: dvb-t, frequency: 4980 MHz, bandwidth: 8 MHz, modulation: 64qam, code-rate: 2/3, guard-interval: 1/32}
#                                   ^^^^^^^^ dvb-t is sent at 160 MHz to 960 MHz, and mux-a is declared at 4980 MHz
`,
    good: `
multiplexes:
  sat-1: {system: dvb-s2, frequency: 11260 MHz, polarisation: vertical, symbol-rate: 27.5 MBd, modulation: 8psk, code-rate: 2/3}
  mux-a: {system: dvb-t, frequency: 498 MHz, bandwidth: 8 MHz, modulation: 64qam, code-rate: 2/3, guard-interval: 1/32}
  net-1: {system: dvb-c, frequency: 130 MHz, symbol-rate: 6.9 MBd, modulation: 256qam}
`,
  },
];
