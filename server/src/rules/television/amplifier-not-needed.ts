import { fixOf } from '../../site/edit.ts';
import { namePlace } from '../../site/item.ts';
import { takeOutEdits } from '../../site/television/insert-part.ts';
import { decibels, level } from '../../text/radio-words.ts';
import { isEnoughWithout } from '../../television/without-amplifier.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';
import { asName } from '../../text/words.ts';

export const amplifierNotNeeded: Rule = {
  id: 'amplifier-not-needed',
  severity: 'information',
  summary: 'Without the amplifier all levels and margins would hold.',
  why: `It adds noise and distortion, takes power, and is one more thing that fails. Take it out.`,
  source: 'common practice, no source',
  check({ plan, site }: RuleContext, report: Report): void {
    for (const load of plan.television.amplifiers) {
      const { device } = load;
      const without = isEnoughWithout(plan.television, device, site.policies.aerialSystem.margin);
      if (without === undefined) continue;
      report({
        at: namePlace(device.item),
        message:
          `Without ${asName(device.name)} the weakest outlet or tuner would still have ${level(without.level)} and a margin of ` +
          `${decibels(without.margin)}. Take it out.`,
        acceptAt: [device.name],
        // A consequence of a row that is too long, where one must go anyway.
        effects: [load],
        fixes: () => fixOf(`Take ${asName(device.name)} out`, ...takeOutEdits(site, device)),
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
  chimney-aerial: {kind: aerial, receives: {mux-a: 70 dBµV}}
  mast-amp: {kind: amplifier, gain: 6 dB, noise-figure: 4 dB, max-output: 98 dBµV}
# ^^^^^^^^ Without mast-amp the weakest outlet or tuner would still have 64.1 dBµV and a margin of
  parlour-outlet: {kind: outlet, loss: 1 dB}
cables:
  - {from: chimney-aerial, to: mast-amp/in, type: coax-6, length: 8 m}
  - {from: mast-amp/out, to: parlour-outlet/in, type: coax-6, length: 20 m}
`,
    fixed: `
multiplexes:
  mux-a: {system: dvb-t, channel: 46, modulation: 64qam, code-rate: 2/3, guard-interval: 1/32}
devices:
  chimney-aerial: {kind: aerial, receives: {mux-a: 70 dBµV}}
  parlour-outlet: {kind: outlet, loss: 1 dB}
cables:
  - {from: chimney-aerial, to: parlour-outlet/in, type: coax-6, length: 28 m}
`,
  },
];
