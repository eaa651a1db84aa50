import { namePlace } from '../../site/item.ts';
import type { Device } from '../../site/model.ts';
import { isEnoughWithout } from '../../television/without-amplifier.ts';
import { list } from '../../text/words.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';

/** More in a row than these add up to too much distortion. */
const MOST = 2;

export const amplifierCascade: Rule = {
  id: 'amplifier-cascade',
  severity: 'warning',
  summary: 'More than two amplifiers are in a row.',
  why: `Their distortion adds up, and each of them must then stay further below its limit. One amplifier at the aerial,
and one with more output in front of a large splitter, do for a house.`,
  source: 'common practice, no source',
  check({ plan, site }: RuleContext, report: Report): void {
    if (plan.television.amplifiers.length <= MOST) return;
    // Rows by the first amplifier that is one too many.
    const rows = new Map<Device, readonly Device[]>();
    for (const { steps } of plan.television.signals.all) {
      const row = steps.flatMap(({ by }) => ('device' in by && by.device.kind === 'amplifier' ? [by.device] : []));
      const over = row[MOST];
      if (over !== undefined && row.length > (rows.get(over)?.length ?? 0)) rows.set(over, row);
    }
    const { margin } = site.policies.aerialSystem;
    for (const [over, row] of rows) {
      const spare = row.find((device) => isEnoughWithout(plan.television, device, margin) !== undefined);
      report({
        at: namePlace(over.item),
        message:
          `${list(row.map(({ name }) => name))} are in a row, and their distortion adds up. ` +
          `Take ${spare === undefined ? 'one' : spare.name} out.`,
        acceptAt: row.map(({ name }) => name),
        entails: row.flatMap((device) => plan.television.amplifier(device) ?? []),
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
  chimney-aerial: {kind: aerial, receives: {mux-a: 50 dBµV}}
  mast-amp: {kind: amplifier, gain: 12 dB, noise-figure: 2 dB}
  loft-amp: {kind: amplifier, gain: 12 dB, noise-figure: 4 dB}
  hall-amp: {kind: amplifier, gain: 12 dB, noise-figure: 4 dB}
# ^^^^^^^^ mast-amp, loft-amp and hall-amp are in a row
cables:
  - {from: chimney-aerial, to: mast-amp/in, type: coax-6, length: 1 m}
  - {from: mast-amp/out, to: loft-amp/in, type: coax-6, length: 10 m}
  - {from: loft-amp/out, to: hall-amp/in, type: coax-6, length: 10 m}
`,
    good: `
multiplexes:
  mux-a: {system: dvb-t, channel: 46, modulation: 64qam, code-rate: 2/3, guard-interval: 1/32}
devices:
  chimney-aerial: {kind: aerial, receives: {mux-a: 50 dBµV}}
  mast-amp: {kind: amplifier, gain: 12 dB, noise-figure: 2 dB}
  loft-amp: {kind: amplifier, gain: 24 dB, noise-figure: 4 dB}
cables:
  - {from: chimney-aerial, to: mast-amp/in, type: coax-6, length: 1 m}
  - {from: mast-amp/out, to: loft-amp/in, type: coax-6, length: 10 m}
`,
  },
];
