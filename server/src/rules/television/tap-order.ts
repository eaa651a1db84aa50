import { type Fix, fixOf, setValue } from '../../site/edit.ts';
import { headOf } from '../../site/item.ts';
import type { Device } from '../../site/model.ts';
import { decibels } from '../../text/radio-words.ts';
import { valueAt } from '../../television/part.ts';
import { dataAt } from '../../text/syntax.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';

export const tapOrder: Rule = {
  id: 'tap-order',
  severity: 'hint',
  summary: 'On a run of taps a later one takes less than an earlier one.',
  why: `The first outlets get too much and the last too little. Along a run the tap loss falls: 20 dB first, then 16, then
12. Swap the two.`,
  source: 'common practice, no source',
  check({ plan }: RuleContext, report: Report): void {
    const reported = new Set<Device>();
    for (const { steps, frequency } of plan.television.signals.all) {
      let before: Device | undefined;
      for (const { by } of steps) {
        if (!('device' in by) || by.device.kind !== 'tap') continue;
        const here = tapLoss(by.device, frequency);
        const earlier = before === undefined ? undefined : tapLoss(before, frequency);
        if (
          here !== undefined &&
          earlier !== undefined &&
          here > earlier &&
          !reported.has(by.device) &&
          before !== undefined
        ) {
          reported.add(by.device);
          report({
            at: headOf(by.device.item),
            message: `${by.device.name} takes ${decibels(here)} and stands behind ${before.name}, which takes ${decibels(earlier)}. Swap the two.`,
            about: [by.device.name, before.name],
            fixes: swapped(before, by.device),
          });
        }
        before = by.device;
      }
    }
  },
};

/** Each gets the losses of the other. */
function swapped(a: Device, b: Device): () => readonly Fix[] {
  return () => {
    const edits = ['tap-loss', 'loss'].flatMap((key) => {
      const [ofA, ofB] = [a, b].map(({ item }) => dataAt(item.data, [key]));
      if (typeof ofA !== 'string' || typeof ofB !== 'string') return key === 'loss' && ofA === ofB ? [] : [undefined];
      return [setValue(a.item, [key], ofB), setValue(b.item, [key], ofA)];
    });
    return fixOf(`Swap the losses of ${a.name} and ${b.name}`, ...edits);
  };
}

function tapLoss({ aerial }: Device, frequency: number): number | undefined {
  return aerial?.tapLoss === undefined ? undefined : valueAt(aerial.tapLoss, frequency);
}

export const examples: readonly Example[] = [
  {
    bad: `
multiplexes:
  mux-a: {system: dvb-t, channel: 46, modulation: 64qam, code-rate: 2/3, guard-interval: 1/32}
devices:
  chimney-aerial: {kind: aerial, receives: {mux-a: 75 dBµV}}
  near-tap: {kind: tap, tap-loss: 12 dB, loss: 1.2 dB, terminated: [tap-1]}
  far-tap: {kind: tap, tap-loss: 20 dB, loss: 0.8 dB, terminated: [tap-1, out]}
# ^^^^^^^ far-tap takes 20.0 dB and stands behind near-tap, which takes 12.0 dB. Swap the two.
cables:
  - {from: chimney-aerial, to: near-tap/in, type: coax-6, length: 5 m}
  - {from: near-tap/out, to: far-tap/in, type: coax-6, length: 5 m}
`,
    fixed: `
multiplexes:
  mux-a: {system: dvb-t, channel: 46, modulation: 64qam, code-rate: 2/3, guard-interval: 1/32}
devices:
  chimney-aerial: {kind: aerial, receives: {mux-a: 75 dBµV}}
  near-tap: {kind: tap, tap-loss: 20 dB, loss: 0.8 dB, terminated: [tap-1]}
  far-tap: {kind: tap, tap-loss: 12 dB, loss: 1.2 dB, terminated: [tap-1, out]}
cables:
  - {from: chimney-aerial, to: near-tap/in, type: coax-6, length: 5 m}
  - {from: near-tap/out, to: far-tap/in, type: coax-6, length: 5 m}
`,
  },
];
