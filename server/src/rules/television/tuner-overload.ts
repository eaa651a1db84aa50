import { acceptAtConnector } from '../../site/accept-at.ts';
import { namePlace } from '../../site/item.ts';
import { attenuatorFor } from '../../standards/television/attenuator.ts';
import { connectorName } from '../../site/model.ts';
import { attenuatorInFront } from '../../television/insert-fix.ts';
import { type Affected, commonCauses } from '../../television/common-cause.ts';
import type { Receiver } from '../../television/reception.ts';
import type { Signal } from '../../television/signals.ts';
import { excessOf } from '../../television/too-much.ts';
import { decibels, level } from '../../text/radio-words.ts';
import { count, few, asName } from '../../text/words.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';

export const tunerOverload: Rule = {
  id: 'tuner-overload',
  severity: 'error',
  summary: 'All signals together are more than a receiver takes.',
  why: `The first stage of a tuner sees all channels at once and distorts them all, so that the strongest spoils the
weakest, although each of them looks right by itself. An attenuator in front, or a filter for what is not wanted, puts
it right.`,
  source: 'common practice, no source; powers add up',
  check({ plan: { television }, site }: RuleContext, report: Report): void {
    const { margin } = site.policies.aerialSystem;
    const over: Over[] = [];
    const right: Signal[] = [];
    for (const receiver of television.reception.receivers) {
      const [strongest] = [...receiver.points].sort((a, b) => b.signal.level - a.signal.level);
      if (excessOf(receiver) > 0 && strongest !== undefined) over.push({ receiver, signal: strongest.signal });
      else right.push(...receiver.points.slice(0, 1).map(({ signal }) => signal));
    }
    for (const { affected, behind } of commonCauses(over, right)) {
      const first = affected.reduce((most, one) => (excessOf(one.receiver) > excessOf(most.receiver) ? one : most));
      const { at, composite, maxInput, points } = first.receiver;
      const elsewhere = affected.filter((one) => one !== first);
      const loss = attenuatorFor(excessOf(first.receiver));
      report({
        at: namePlace(at.device.item),
        message:
          `${count(points.length, 'multiplex', 'multiplexes')} at ${at.name} make ${level(composite)} together, ` +
          `${decibels(excessOf(first.receiver))} more than the ${level(maxInput)} that it takes` +
          (behind === undefined
            ? ''
            : `; likewise at ${few(elsewhere.map((one) => connectorName(one.receiver.at)))} behind ${asName(behind.name)}`) +
          `. Put an attenuator of ${loss} dB in front, or lower the gain.`,
        acceptAt: acceptAtConnector(at),
        // A consequence where an amplifier or an outlet in front has too high a level, which is reported.
        effects: affected.map((one) => one.receiver),
        related: elsewhere.map((one) => ({
          at: namePlace(one.receiver.at.device.item),
          message: `${asName(one.receiver.at.name)} gets ${level(one.receiver.composite)} here`,
        })),
        fixes: () => {
          const isEnough = points.every((point) => point.margin === undefined || point.margin - loss >= margin);
          return affected.length === 1 && isEnough ? attenuatorInFront(site, television, at, loss) : [];
        },
      });
    }
  },
};

/** A receiver with too high a level, with its strongest signal. */
interface Over extends Affected {
  readonly receiver: Receiver;
}

export const examples: readonly Example[] = [
  {
    bad: `
multiplexes:
  mux-a: {system: dvb-t, channel: 46, modulation: 64qam, code-rate: 2/3, guard-interval: 1/32}
  mux-b: {system: dvb-t, channel: 40, modulation: 64qam, code-rate: 2/3, guard-interval: 1/32}
devices:
  chimney-aerial: {kind: aerial, receives: {mux-a: 78 dBµV, mux-b: 79 dBµV}}
  tv-tuner: {kind: tuner, inputs: {rf: {max-input: 80 dBµV}}}
# ^^^^^^^^ 2 multiplexes at rf make 81.2 dBµV together, 1.2 dB more than the 80.0 dBµV that it takes. Put an attenuator of 3 dB in front
cables:
  - {from: chimney-aerial, to: tv-tuner/rf, type: coax-6, length: 2 m}
`,
    fixed: `
multiplexes:
  mux-a: {system: dvb-t, channel: 46, modulation: 64qam, code-rate: 2/3, guard-interval: 1/32}
  mux-b: {system: dvb-t, channel: 40, modulation: 64qam, code-rate: 2/3, guard-interval: 1/32}
devices:
  chimney-aerial: {kind: aerial, receives: {mux-a: 78 dBµV, mux-b: 79 dBµV}}
  tv-tuner: {kind: tuner, inputs: {rf: {max-input: 80 dBµV}}}
  tv-tuner-pad: {kind: attenuator, loss: 3 dB}
cables:
  - {from: chimney-aerial, to: tv-tuner-pad/in, type: coax-6, length: 2 m}
  - {from: tv-tuner-pad/out, to: tv-tuner/rf, type: coax-6, length: 0.1 m}
`,
  },
];
