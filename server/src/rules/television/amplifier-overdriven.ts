import { headOf, placeOf } from '../../site/item.ts';
import { attenuatorFor } from '../../standards/television/attenuator.ts';
import { decibels, level } from '../../text/radio-words.ts';
import { count } from '../../text/words.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';

export const amplifierOverdriven: Rule = {
  id: 'amplifier-overdriven',
  severity: 'error',
  summary: 'An amplifier must put out more than it can without distortion.',
  why: `Its distortion looks like noise on every channel, and no attenuator behind it helps. Put one in front, or take an
amplifier with less gain. What makers give as largest output holds for two carriers; more of them lower it.`,
  source: 'derating by 7.5 · lg(N − 1): common practice, within 1 dB of two makers’ tables',
  check({ plan }: RuleContext, report: Report): void {
    for (const { device, strongest, carriers, limit, headroom } of plan.television.amplifiers) {
      if (headroom === undefined || limit === undefined || headroom >= 0) continue;
      report({
        at: headOf(device.item),
        message:
          `${device.name} puts out ${strongest.multiplex.name} at ${level(strongest.level)}, ${decibels(-headroom)} above ` +
          `its limit of ${level(limit)} with ${count(carriers, 'multiplex', 'multiplexes')}. Put an attenuator of ` +
          `${attenuatorFor(-headroom)} dB in front, or take less gain.`,
        about: [device.name],
        related: [{ at: placeOf(device.item, ['max-output']), message: 'its largest output, with two carriers' }],
      });
    }
  },
};

export const examples: readonly Example[] = [
  {
    bad: `
multiplexes:
  mux-a: {system: dvb-t, channel: 46, modulation: 64qam, code-rate: 2/3, guard-interval: 1/32}
devices:
  chimney-aerial: {kind: aerial, receives: {mux-a: 80 dBµV}}
  mast-amp: {kind: amplifier, gain: 20 dB, noise-figure: 2 dB, max-output: 98 dBµV}
# ^^^^^^^^ mast-amp puts out mux-a at 99.9 dBµV, 1.9 dB above its limit of 98.0 dBµV with 1 multiplex. Put an attenuator of 3 dB in front
cables:
  - {from: chimney-aerial, to: mast-amp/in, type: coax-6, length: 0.5 m}
`,
    good: `
multiplexes:
  mux-a: {system: dvb-t, channel: 46, modulation: 64qam, code-rate: 2/3, guard-interval: 1/32}
devices:
  chimney-aerial: {kind: aerial, receives: {mux-a: 80 dBµV}}
  pad: {kind: attenuator, loss: 3 dB}
  mast-amp: {kind: amplifier, gain: 20 dB, noise-figure: 2 dB, max-output: 98 dBµV}
cables:
  - {from: chimney-aerial, to: pad/in, type: coax-6, length: 0.5 m}
  - {from: pad/out, to: mast-amp/in, type: coax-6, length: 0.5 m}
`,
  },
];
