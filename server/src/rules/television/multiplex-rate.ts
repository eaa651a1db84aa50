import { acceptAtItem } from '../../site/accept-at.ts';
import { namePlace, placeOf } from '../../site/item.ts';
import type { Site } from '../../site/model.ts';
import { computedRate, netRateOf, transmissionOf } from '../../site/television/channel.ts';
import { fraction } from '../../standards/television/net-rate.ts';
import { BITS_PER_SYMBOL } from '../../standards/television/system.ts';
import type { Multiplex } from '../../site/television/facts.ts';
import { bitRate, few, percent, asName } from '../../text/words.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';

/** How far a measured net rate may be from the formula's. */
const CLOSE = 0.01;

export const multiplexRate: Rule = {
  id: 'multiplex-rate',
  severity: 'error',
  showAfter: 'item',
  summary: 'The rates of a multiplex contradict each other.',
  why: `A multiplex carries no more than its modulation, code rate and guard interval leave. Where its services add up to
more, or its \`net-rate\` is not that of the formula, one of the figures is a slip, and the loads of all streams from it
are wrong. The peaks of the services may add up to more: the multiplex shares its rate out among them.`,
  source: 'EN 300 744, EN 302 755, EN 300 429, EN 300 421 and EN 302 307-1, by transcriptions; 1 % is common practice',
  check({ site }: RuleContext, report: Report): void {
    for (const multiplex of site.multiplexes) {
      const { item, name, netRate } = multiplex;
      const computed = netRate === undefined ? undefined : computedRate(site, multiplex);
      if (netRate !== undefined && computed !== undefined && Math.abs(netRate / computed.rate - 1) > CLOSE)
        report({
          at: placeOf(item, ['net-rate']),
          message:
            `${asName(name)} can have ${bitRate(computed.rate)} (${computed.formula}), and its net rate is given as ` +
            `${bitRate(netRate)}. Correct one of them.`,
          acceptAt: acceptAtItem(item),
        });
      else if (netRate !== undefined && netRate > mostOf(site, multiplex))
        report({
          at: placeOf(item, ['net-rate']),
          message:
            `The net rate of ${asName(name)} is given as ${bitRate(netRate)}, and its channel, modulation and code rate leave ` +
            `no more than ${bitRate(mostOf(site, multiplex))}. Correct one of them.`,
          acceptAt: acceptAtItem(item),
        });
      else reportServices(site, multiplex, report);
    }
  },
};

/** The most bit/s: the whole channel as symbols, less only the error correction. */
function mostOf(site: Site, multiplex: Multiplex): number {
  const transmission = transmissionOf(site, multiplex);
  if (transmission?.system !== 'dvb-t2' || transmission.codeRate === undefined) return Infinity;
  const { bandwidth = 8e6, modulation, codeRate } = transmission;
  return bandwidth * BITS_PER_SYMBOL[modulation] * fraction(codeRate);
}

function reportServices(site: Site, multiplex: Multiplex, report: Report): void {
  const most = netRateOf(site, multiplex)?.rate;
  if (most === undefined) return;
  const own = site.services.filter(({ multiplexes }) => multiplexes.includes(multiplex.name));
  const sum = own.reduce((total, { rate = 0 }) => total + rate, 0);
  if (sum <= most) return;
  report({
    at: namePlace(multiplex.item),
    message:
      `${few(own.map(({ name }) => name))} of ${asName(multiplex.name)} take ${bitRate(sum)} together, ` +
      `${percent(sum, most)} of the ${bitRate(most)} that it has. Correct their rates, or what they are in.`,
    acceptAt: [multiplex.name, ...own.map(({ name }) => name)],
  });
}

export const examples: readonly Example[] = [
  {
    bad: `
multiplexes:
  mux-a: {system: dvb-t, channel: 46, modulation: 64qam, code-rate: 2/3, guard-interval: 1/32, net-rate: 27.1 Mb/s}
#                                                                                                        ^^^^^^^^^ mux-a can have 24.1 Mb/s (423/544 · 8 MHz · 6 bit · 2/3 / (1 + 1/32)), and its net rate is given as 27.1 Mb/s
`,
    good: `
multiplexes:
  mux-a: {system: dvb-t, channel: 46, modulation: 64qam, code-rate: 2/3, guard-interval: 1/32, net-rate: 24.128 Mb/s}
`,
  },
  {
    bad: `
multiplexes:
  mux-a: {system: dvb-t, channel: 46, modulation: 16qam, code-rate: 1/2, guard-interval: 1/4}
# ^^^^^ news and film of mux-a take 10.2 Mb/s together, 102 % of the 9.95 Mb/s that it has
services:
  news: {multiplex: mux-a, rate: 4.2 Mb/s}
  film: {multiplex: mux-a, rate: 6 Mb/s, peak-rate: 9 Mb/s}
`,
    good: `
multiplexes:
  mux-a: {system: dvb-t, channel: 46, modulation: 16qam, code-rate: 2/3, guard-interval: 1/4}
services:
  news: {multiplex: mux-a, rate: 4.2 Mb/s}
  film: {multiplex: mux-a, rate: 6 Mb/s, peak-rate: 9 Mb/s}
`,
  },
  {
    bad: `
multiplexes:
  mux-b: {system: dvb-t2, channel: 21, modulation: 256qam, code-rate: 2/3, net-rate: 402 Mb/s}
#                                                                                    ^^^^^^^^ and its channel, modulation and code rate leave no more than 42.7 Mb/s
`,
    good: `
multiplexes:
  mux-b: {system: dvb-t2, channel: 21, modulation: 256qam, code-rate: 2/3, net-rate: 40.2 Mb/s}
`,
  },
];
