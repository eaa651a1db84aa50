import { placeOf } from '../../site/item.ts';
import { transmissionOf, skyFrequency } from '../../site/television/channel.ts';
import type { Multiplex } from '../../site/television/facts.ts';
import {
  bandwidthsOf,
  codeRatesOf,
  guardIntervalsOf,
  isSatellite,
  modulationsOf,
  occupiedBandwidth,
} from '../../standards/television/system.ts';
import { nodeAt } from '../../site/edit.ts';
import { megahertz } from '../../text/radio-words.ts';
import { list, asName } from '../../text/words.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';
import type { Severity, Site } from '../../site/model.ts';

export const multiplexParameters: Rule = {
  id: 'multiplex-parameters',
  severity: 'error',
  showAfter: 'item',
  summary: 'A multiplex has parameters that its system does not have, or no place in the spectrum.',
  why: `Nothing can be on air like that, so one of them is a slip, and neither rate nor level can be counted on. Take the
parameters from a meter, or from the broadcaster's table.`,
  source:
    'EN 300 744, EN 302 755, EN 300 429, EN 300 421, EN 302 307-1, ATSC A/53, ITU-T J.83, ABNT NBR 15601; by transcriptions',
  check({ site }: RuleContext, report: Report): void {
    for (const multiplex of site.multiplexes) {
      const fault = faultOf(site, multiplex);
      if (fault === undefined) continue;
      report({
        at: placeOf(multiplex.item, [fault.key]),
        message: fault.message,
        ...(fault.severity !== undefined && { severity: fault.severity }),
        acceptAt: [multiplex.name],
      });
    }
  },
};

interface Fault {
  readonly key: string;
  /** The severity, where it is less than for something that cannot be on air. */
  readonly severity?: Severity;
  readonly message: string;
}

function faultOf(site: Site, multiplex: Multiplex): Fault | undefined {
  const { system, modulation, codeRate, guardInterval, bandwidth, name } = multiplex;
  if (system === undefined) return undefined;
  const modulations = modulationsOf(system);
  if (modulation !== undefined && !modulations.includes(modulation))
    return { key: 'modulation', message: notIn(system, modulation, modulations) };
  const rates = modulation === undefined ? [] : codeRatesOf(system, modulation);
  if (codeRate !== undefined && rates.length > 0 && !rates.includes(codeRate))
    return { key: 'code-rate', message: notIn(`${system} with ${modulation ?? ''}`, codeRate, rates) };
  const guards = guardIntervalsOf(system);
  if (guardInterval !== undefined && guards.length > 0 && !guards.includes(guardInterval))
    return { key: 'guard-interval', message: notIn(system, guardInterval, guards) };
  const bandwidths = bandwidthsOf(system);
  if (bandwidth !== undefined && bandwidths.length > 0 && !bandwidths.includes(bandwidth))
    return { key: 'bandwidth', message: notIn(system, megahertz(bandwidth), bandwidths.map(megahertz)) };
  if (
    skyFrequency(site, multiplex) === undefined &&
    multiplex.channel === undefined &&
    nodeAt(multiplex.item, ['channel']) === undefined &&
    nodeAt(multiplex.item, ['frequency']) === undefined
  )
    return { key: 'system', message: `${asName(name)} says neither channel nor frequency. Say one of them.` };
  return tooWide(site, multiplex) ?? unpolarised(multiplex);
}

/** A fault where a satellite multiplex lacks its polarisation: satellites use each frequency in both. */
function unpolarised({ system, item, name, polarisation }: Multiplex): Fault | undefined {
  if (system === undefined || !isSatellite(system) || polarisation !== undefined) return undefined;
  if (nodeAt(item, ['polarisation']) !== undefined) return undefined;
  return {
    key: 'system',
    severity: 'hint',
    message:
      `${asName(name)} does not say its polarisation, so which receivers can have it beside others is not counted, and ` +
      'no box can be set to it. Add `polarisation`.',
  };
}

function notIn(what: string, found: string, allowed: readonly string[]): string {
  return `${what} has no ${found}; it has ${list(allowed)}.`;
}

/** A fault where a cable signal is wider than its channel and overlaps the next one. */
function tooWide(site: Site, multiplex: Multiplex): Fault | undefined {
  const transmission = transmissionOf(site, multiplex);
  if (transmission?.system !== 'dvb-c') return undefined;
  const width = occupiedBandwidth(transmission);
  const channel = transmission.bandwidth ?? 8e6;
  if (width <= channel) return undefined;
  return {
    key: 'symbol-rate',
    message: `Its signal is ${megahertz(width)} wide (symbol rate × 1.15), and a channel ${megahertz(channel)}.`,
  };
}

export const examples: readonly Example[] = [
  {
    bad: `
multiplexes:
  mux-a: {system: dvb-t, channel: 46, modulation: 256qam, code-rate: 2/3, guard-interval: 1/32}
#                                                 ^^^^^^ dvb-t has no 256qam; it has qpsk, 16qam and 64qam.
  mux-b: {system: dvb-t, channel: 40, modulation: 64qam, code-rate: 3/5, guard-interval: 1/32}
#                                                                   ^^^ dvb-t with 64qam has no 3/5; it has 1/2, 2/3, 3/4, 5/6 and 7/8.
  cable-1: {system: dvb-c, frequency: 314 MHz, symbol-rate: 7.2 MBd, modulation: 256qam}
#                                                           ^^^^^^^ Its signal is 8.28 MHz wide (symbol rate × 1.15), and a channel 8 MHz.
`,
    good: `
multiplexes:
  mux-a: {system: dvb-t2, channel: 46, modulation: 256qam, code-rate: 2/3}
  mux-b: {system: dvb-t, channel: 40, modulation: 64qam, code-rate: 2/3, guard-interval: 1/32}
  cable-1: {system: dvb-c, frequency: 314 MHz, symbol-rate: 6.9 MBd, modulation: 256qam}
`,
  },
  {
    bad: `
multiplexes:
  sky-a: {system: dvb-s2, frequency: 11778 MHz, symbol-rate: 27.5 MBd, modulation: 8psk, code-rate: 2/3}
#                 ^^^^^^ sky-a does not say its polarisation
`,
    good: `
multiplexes:
  sky-a: {system: dvb-s2, frequency: 11778 MHz, polarisation: vertical, symbol-rate: 27.5 MBd, modulation: 8psk, code-rate: 2/3}
`,
  },
];
