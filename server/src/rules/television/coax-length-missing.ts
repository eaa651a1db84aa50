import { placeOf } from '../../site/item.ts';
import { nodeAt } from '../../site/edit.ts';
import { acceptAtItem } from '../../site/accept-at.ts';
import { isCoax } from '../../standards/television/coax.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';

export const coaxLengthMissing: Rule = {
  id: 'coax-length-missing',
  severity: 'information',
  summary: 'A coax has no length or no type, so it counts as no loss.',
  why: `Everything behind it is then a guess on the good side: a run of 30 m takes off some 5 dB. Say length and type, or
for a part that is screwed on directly a length of a few centimetres.`,
  check({ plan }: RuleContext, report: Report): void {
    for (const { cable, a, b } of plan.television.runs) {
      const lacks = [
        ...(nodeAt(cable.item, ['length']) === undefined ? ['length'] : []),
        ...(cable.coax.attenuation === undefined && !isCoax(cable.type) && cable.type === undefined ? ['type'] : []),
      ];
      // No received signal passes it, so nothing is computed behind it.
      if (lacks.length === 0 || plan.television.signals.at(a).length + plan.television.signals.at(b).length === 0)
        continue;
      report({
        at: placeOf(cable.item, ['from']),
        message: `This coax has no ${lacks.join(' and no ')}, so no loss is counted for it. Write ${lacks.length === 1 ? 'it' : 'both'}.`,
        acceptAt: acceptAtItem(cable.item),
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
  chimney-aerial: {kind: aerial, receives: {mux-a: 60 dBµV}}
  parlour-outlet: {kind: outlet, loss: 1 dB}
cables:
  - {from: chimney-aerial, to: parlour-outlet/in, type: coax-6}
#          ^^^^^^^^^^^^^^ This coax has no length, so no loss is counted for it.
`,
    good: `
multiplexes:
  mux-a: {system: dvb-t, channel: 46, modulation: 64qam, code-rate: 2/3, guard-interval: 1/32}
devices:
  chimney-aerial: {kind: aerial, receives: {mux-a: 60 dBµV}}
  parlour-outlet: {kind: outlet, loss: 1 dB}
cables:
  - {from: chimney-aerial, to: parlour-outlet/in, type: coax-6, length: 12 m}
`,
  },
];
