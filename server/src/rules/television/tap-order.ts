import { type Fix, fixOf, setValue } from '../../site/edit.ts';
import { namePlace } from '../../site/item.ts';
import type { Device } from '../../site/model.ts';
import { decibels } from '../../text/radio-words.ts';
import { valueAt } from '../../television/part.ts';
import { list, asName } from '../../text/words.ts';
import { dataAt } from '../../text/syntax.ts';
import type { Example, Finding, Report, Rule, RuleContext } from '../../lint/rule.ts';

export const tapOrder: Rule = {
  id: 'tap-order',
  severity: 'hint',
  summary: 'On a run of taps a later one takes less than an earlier one.',
  why: `The first outlets get too much and the last too little. Along a run the tap loss falls: 20 dB first, then 16, then
12. Swap the two.`,
  source: 'common practice, no source',
  check({ plan, site }: RuleContext, report: Report): void {
    if (!site.devices.some(({ kind }) => kind === 'tap')) return;
    // The longest row through each tap at which the loss rises first.
    const rows = new Map<Device, readonly Tap[]>();
    for (const { steps, frequency } of plan.television.signals.all) {
      const row = steps.flatMap(({ by }): Tap[] => {
        if (!('device' in by) || by.device.kind !== 'tap') return [];
        const loss = tapLoss(by.device, frequency);
        return loss === undefined ? [] : [{ device: by.device, loss }];
      });
      const rise = row.find(({ loss }, index) => loss > (row[index - 1]?.loss ?? Infinity));
      if (rise !== undefined && row.length > (rows.get(rise.device)?.length ?? 0)) rows.set(rise.device, row);
    }
    for (const [device, row] of rows) report(foundIn(device, row));
  },
};

interface Tap {
  readonly device: Device;
  /** dB */
  readonly loss: number;
}

function foundIn(device: Device, row: readonly Tap[]): Finding {
  const sorted = [...row].sort((a, b) => b.loss - a.loss);
  const moved = row.filter(({ loss }, index) => loss !== sorted[index]?.loss);
  const [first, second, ...others] = moved;
  const isSwap = first !== undefined && second !== undefined && others.length === 0;
  return {
    at: namePlace((isSwap ? second.device : device).item),
    message: isSwap
      ? `${asName(second.device.name)} takes ${decibels(second.loss)} and stands behind ${asName(first.device.name)}, which takes ${decibels(first.loss)}. Swap the two.`
      : `${list(row.map((tap) => tap.device.name))} take ${list(row.map(({ loss }) => decibels(loss)))} in this order, and ` +
        'the tap loss falls along a run. Begin with the largest.',
    acceptAt: moved.map((tap) => tap.device.name).reverse(),
    fixes: isSwap ? swapped(first.device, second.device) : () => [],
  };
}

/** Exchanges the losses of two taps. */
function swapped(a: Device, b: Device): () => readonly Fix[] {
  return () => {
    const edits = ['tap-loss', 'loss'].flatMap((key) => {
      const [ofA, ofB] = [a, b].map(({ item }) => dataAt(item.data, [key]));
      if (typeof ofA !== 'string' || typeof ofB !== 'string') return key === 'loss' && ofA === ofB ? [] : [undefined];
      return [setValue(a.item, [key], ofB), setValue(b.item, [key], ofA)];
    });
    return fixOf(`Swap the losses of ${asName(a.name)} and ${asName(b.name)}`, ...edits);
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
  hall-tap: {kind: tap, tap-loss: 12 dB, terminated: [tap-1]}
  study-tap: {kind: tap, tap-loss: 20 dB, terminated: [tap-1]}
# ^^^^^^^^^ hall-tap, study-tap and attic-tap take 12.0 dB, 20.0 dB and 16.0 dB in this order
  attic-tap: {kind: tap, tap-loss: 16 dB, terminated: [tap-1, out]}
cables:
  - {from: chimney-aerial, to: hall-tap/in, type: coax-6, length: 5 m}
  - {from: hall-tap/out, to: study-tap/in, type: coax-6, length: 5 m}
  - {from: study-tap/out, to: attic-tap/in, type: coax-6, length: 5 m}
`,
  },
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
