import { placeOf } from '../../site/item.ts';
import { acceptAtItem } from '../../site/accept-at.ts';
import type { Cable } from '../../site/model.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';
import { asName } from '../../text/words.ts';

export const coaxLoop: Rule = {
  id: 'coax-loop',
  severity: 'error',
  summary: 'A coax closes a loop.',
  why: `With an amplifier in it a loop oscillates and drowns all reception; without one the signal meets itself, and some
channels vanish. From each aerial the coax must branch like a tree. Take one coax out.`,
  source: 'common practice, no source',
  check({ plan }: RuleContext, report: Report): void {
    const reported = new Set<Cable>();
    for (const { run, source } of plan.television.signals.loops) {
      if (reported.has(run.cable)) continue;
      reported.add(run.cable);
      report({
        at: placeOf(run.cable.item, ['from']),
        message: `This coax closes a loop: what comes from ${asName(source.device.name)} goes round in it. Remove one coax of the loop.`,
        acceptAt: acceptAtItem(run.cable.item),
      });
    }
    for (const { cable } of plan.television.signals.rings)
      report({
        at: placeOf(cable.item, ['from']),
        message: 'This coax closes a loop: the amplifier feeds its own input. Remove one coax of the loop.',
        acceptAt: acceptAtItem(cable.item),
      });
  },
};

export const examples: readonly Example[] = [
  {
    bad: `
multiplexes:
  mux-a: {system: dvb-t, channel: 46, modulation: 64qam, code-rate: 2/3, guard-interval: 1/32}
devices:
  chimney-aerial: {kind: aerial, receives: {mux-a: 60 dBµV}}
  loft: {kind: splitter, ways: 3, loss: 6 dB}
  hall: {kind: splitter, ways: 2, loss: 4 dB}
cables:
  - {from: chimney-aerial, to: loft/in, type: coax-6, length: 5 m}
  - {from: loft/out-1, to: hall/in, type: coax-6, length: 5 m}
  - {from: hall/out-1, to: loft/out-2, type: coax-6, length: 5 m}
#          ^^^^^^^^^^ This coax closes a loop: what comes from chimney-aerial goes round in it.
lint: {rules: {splitter-open: off}}
`,
    good: `
multiplexes:
  mux-a: {system: dvb-t, channel: 46, modulation: 64qam, code-rate: 2/3, guard-interval: 1/32}
devices:
  chimney-aerial: {kind: aerial, receives: {mux-a: 60 dBµV}}
  loft: {kind: splitter, ways: 3, loss: 6 dB}
  hall: {kind: splitter, ways: 2, loss: 4 dB}
cables:
  - {from: chimney-aerial, to: loft/in, type: coax-6, length: 5 m}
  - {from: loft/out-1, to: hall/in, type: coax-6, length: 5 m}
lint: {rules: {splitter-open: off}}
`,
  },
  {
    bad: `
devices:
  loft-amp: {kind: amplifier, gain: 20 dB, noise-figure: 2 dB, max-output: 100 dBµV}
  loft: {kind: splitter, ways: 2, loss: 4 dB}
cables:
  - {from: loft-amp/out, to: loft/in, type: coax-6, length: 1 m}
  - {from: loft/out-1, to: loft-amp/in, type: coax-6, length: 1 m}
#          ^^^^^^^^^^ This coax closes a loop: the amplifier feeds its own input. Remove one coax of the loop.
lint: {rules: {splitter-open: off}}
`,
    good: `
devices:
  loft-amp: {kind: amplifier, gain: 20 dB, noise-figure: 2 dB, max-output: 100 dBµV}
  loft: {kind: splitter, ways: 2, loss: 4 dB}
cables:
  - {from: loft-amp/out, to: loft/in, type: coax-6, length: 1 m}
lint: {rules: {splitter-open: off}}
`,
  },
];
