import { acceptAtConnector } from '../../site/accept-at.ts';
import { namePlace } from '../../site/item.ts';
import { connectorName } from '../../site/model.ts';
import { tunerNoiseFigure } from '../../standards/television/reception.ts';
import { type Point, isReceived } from '../../television/reception.ts';
import { decibels, level } from '../../text/radio-words.ts';
import { few } from '../../text/words.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';

export const tunerLevelLow: Rule = {
  id: 'tuner-level-low',
  severity: 'error',
  summary: 'The level at a receiver is below the least that it can lock to.',
  why: `The least is the thermal noise in the bandwidth, with the receiver's own noise figure and the carrier to noise that
the modulation needs. Below it no picture comes, whatever a meter calls its strength. The ratio of carrier to noise is
then too low as well: only that is reported, unless it is accepted or turned off.`,
  source: 'N = k T₀ B; the ratios as carrier-to-noise has them',
  check({ plan }: RuleContext, report: Report): void {
    for (const receiver of plan.television.reception.receivers) {
      const low = receiver.points
        .filter((point) => isReceived(receiver, point) && missingAt(point) > 0)
        .sort((a, b) => missingAt(b) - missingAt(a));
      const [worst, ...others] = low;
      if (worst === undefined) continue;
      const { signal } = worst;
      report({
        at: namePlace(signal.at.device.item),
        message:
          `${signal.multiplex.name} reaches ${connectorName(signal.at)} at ${level(signal.level)}, ` +
          `${decibels(missingAt(worst))} below the ${level(signal.level + missingAt(worst))} that it locks to` +
          (others.length === 0 ? '' : `; also ${few(others.map((point) => point.signal.multiplex.name))}`) +
          '. Lower the loss on the way, or amplify at the aerial.',
        acceptAt: [...acceptAtConnector(signal.at), ...low.map((point) => point.signal.multiplex.name)],
        effects: low,
      });
    }
  },
};

/** dB. */
function missingAt({ signal, noiseFloor, needed }: Point): number {
  const { at, multiplex, level: arriving } = signal;
  if (noiseFloor === undefined || needed === undefined || multiplex.system === undefined) return 0;
  const own = at.device.coaxInputs.get(at.name)?.noiseFigure ?? tunerNoiseFigure(multiplex.system);
  return noiseFloor + own + needed - arriving;
}

export const examples: readonly Example[] = [
  {
    bad: `
multiplexes:
  mux-a: {system: dvb-t, channel: 46, modulation: 64qam, code-rate: 2/3, guard-interval: 1/32}
devices:
  chimney-aerial: {kind: aerial, receives: {mux-a: 30 dBµV}}
  parlour-tv: {kind: display, inputs: {rf: {noise-figure: 6 dB}}}
# ^^^^^^^^^^ mux-a reaches parlour-tv/rf at 24.7 dBµV, 3.6 dB below the 28.3 dBµV that it locks to.
cables:
  - {from: chimney-aerial, to: parlour-tv/rf, type: coax-6, length: 30 m}
lint: {rules: {carrier-to-noise: off}}
`,
    good: `
multiplexes:
  mux-a: {system: dvb-t, channel: 46, modulation: 64qam, code-rate: 2/3, guard-interval: 1/32}
devices:
  chimney-aerial: {kind: aerial, receives: {mux-a: 45 dBµV}}
  parlour-tv: {kind: display, inputs: {rf: {noise-figure: 6 dB}}}
cables:
  - {from: chimney-aerial, to: parlour-tv/rf, type: coax-6, length: 30 m}
`,
  },
];
