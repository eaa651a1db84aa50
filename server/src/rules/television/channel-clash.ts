import { namePlace } from '../../site/item.ts';
import { transmissionOf } from '../../site/television/channel.ts';
import { type Connector, connectorName } from '../../site/model.ts';
import type { Multiplex } from '../../site/television/facts.ts';
import { occupiedBandwidth } from '../../standards/television/system.ts';
import { megahertz } from '../../text/radio-words.ts';
import type { Signal } from '../../television/signals.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';
import { asName } from '../../text/words.ts';

export const channelClash: Rule = {
  id: 'channel-clash',
  severity: 'error',
  summary: 'Two multiplexes on one channel reach one connector.',
  why: `Each is noise to the other, and neither is received. Keep one of them out with a filter, turn the aerial that picks
it up, or combine by band.`,
  source: 'common practice, no source',
  check({ plan, site }: RuleContext, report: Report): void {
    const reported = new Set<Multiplex>();
    const widths = new Map(
      site.multiplexes.map((multiplex) => {
        const transmission = transmissionOf(site, multiplex);
        return [multiplex, transmission === undefined ? 0 : occupiedBandwidth(transmission)];
      }),
    );
    for (const { at, points } of [...plan.television.reception.outlets, ...plan.television.reception.receivers]) {
      const signals = points.map(({ signal }) => signal).sort((a, b) => a.frequency - b.frequency);
      for (const [index, signal] of signals.entries()) {
        const next = signals[index + 1];
        if (next === undefined || reported.has(next.multiplex) || isApart(widths, signal, next)) continue;
        reported.add(next.multiplex);
        report(clash(at, signal, next));
      }
    }
  },
};

/** An LNB's cable carries only one plane at a time, so several planes may use the same frequency. */
function isApart(widths: ReadonlyMap<Multiplex, number>, a: Signal, b: Signal): boolean {
  if (a.multiplex === b.multiplex || a.source.device.kind === 'lnb' || b.source.device.kind === 'lnb') return true;
  // The flanks of carriers may touch.
  return b.frequency - a.frequency > 0.9 * ((widths.get(a.multiplex) ?? 0) + (widths.get(b.multiplex) ?? 0)) * 0.5;
}

function clash(at: Connector, a: Signal, b: Signal): Parameters<Report>[0] {
  return {
    at: namePlace(b.multiplex.item),
    message:
      `${asName(a.multiplex.name)} and ${asName(b.multiplex.name)} are both at ${connectorName(at)}, at ${megahertz(a.frequency)} and ` +
      `${megahertz(b.frequency)}: neither is received. Filter one of them out, or turn its aerial away.`,
    acceptAt: [a.multiplex.name, b.multiplex.name, connectorName(at)],
    related: [{ at: namePlace(a.multiplex.item), message: 'the other' }],
  };
}

export const examples: readonly Example[] = [
  {
    bad: `
multiplexes:
  hill: {system: dvb-t, channel: 46, modulation: 64qam, code-rate: 2/3, guard-interval: 1/32}
  town: {system: dvb-t, channel: 46, modulation: 64qam, code-rate: 2/3, guard-interval: 1/32}
# ^^^^ hill and town are both at parlour-outlet/tv, at 674 MHz and 674 MHz: neither is received.
devices:
  chimney-aerial: {kind: aerial, receives: {hill: 60 dBµV, town: 55 dBµV}}
  parlour-outlet: {kind: outlet, loss: 1 dB}
cables:
  - {from: chimney-aerial, to: parlour-outlet/in, type: coax-6, length: 10 m}
`,
    good: `
multiplexes:
  hill: {system: dvb-t, channel: 46, modulation: 64qam, code-rate: 2/3, guard-interval: 1/32}
  town: {system: dvb-t, channel: 43, modulation: 64qam, code-rate: 2/3, guard-interval: 1/32}
devices:
  chimney-aerial: {kind: aerial, receives: {hill: 60 dBµV, town: 55 dBµV}}
  parlour-outlet: {kind: outlet, loss: 1 dB}
cables:
  - {from: chimney-aerial, to: parlour-outlet/in, type: coax-6, length: 10 m}
`,
  },
];
