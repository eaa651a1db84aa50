import { aboutConnector } from '../../site/about.ts';
import { headOf } from '../../site/item.ts';
import { attenuatorFor } from '../../standards/television/attenuator.ts';
import { decibels, level } from '../../text/radio-words.ts';
import { count } from '../../text/words.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';

export const tunerOverload: Rule = {
  id: 'tuner-overload',
  severity: 'error',
  summary: 'All signals together are more than a receiver takes.',
  why: `The first stage of a tuner sees all channels at once and distorts them all, so that the strongest spoils the
weakest, although each of them looks right by itself. An attenuator in front, or a filter for what is not wanted, puts
it right.`,
  source: 'common practice, no source; powers add up',
  check({ plan }: RuleContext, report: Report): void {
    for (const { at, composite, maxInput, points } of plan.television.reception.receivers) {
      const excess = composite - maxInput;
      if (!(excess > 0)) continue;
      report({
        at: headOf(at.device.item),
        message:
          `${count(points.length, 'multiplex', 'multiplexes')} at ${at.name} make ${level(composite)} together, ` +
          `${decibels(excess)} more than the ${level(maxInput)} that it takes. Put an attenuator of ` +
          `${attenuatorFor(excess)} dB in front, or lower the gain.`,
        about: aboutConnector(at),
      });
    }
  },
};

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
    good: `
multiplexes:
  mux-a: {system: dvb-t, channel: 46, modulation: 64qam, code-rate: 2/3, guard-interval: 1/32}
  mux-b: {system: dvb-t, channel: 40, modulation: 64qam, code-rate: 2/3, guard-interval: 1/32}
devices:
  chimney-aerial: {kind: aerial, receives: {mux-a: 78 dBµV, mux-b: 79 dBµV}}
  pad: {kind: attenuator, loss: 3 dB}
  tv-tuner: {kind: tuner, inputs: {rf: {max-input: 80 dBµV}}}
cables:
  - {from: chimney-aerial, to: pad/in, type: coax-6, length: 2 m}
  - {from: pad/out, to: tv-tuner/rf, type: coax-6, length: 1 m}
`,
  },
];
