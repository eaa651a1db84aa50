import { fixOf, setValue } from '../../site/edit.ts';
import { placeOf } from '../../site/item.ts';
import { formatQuantity } from '../../text/quantity.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';
import { asName } from '../../text/words.ts';

export const supplyVoltage: Rule = {
  id: 'supply-voltage',
  severity: 'error',
  summary: 'A supply on coax has another voltage than the amplifier takes.',
  why: `Too little, and the amplifier blocks the signal; too much, and it burns. Amplifiers take 5, 12 or 24 V: take the
supply that belongs to it. Switch a supply off before you connect or disconnect a plug.`,
  source: 'common practice, no source',
  check({ plan }: RuleContext, report: Report): void {
    for (const { device, feeds } of plan.television.directCurrent.consumers) {
      const taken = device.aerial?.supply;
      if (device.kind !== 'amplifier' || taken === undefined) continue;
      for (const { supply } of feeds) {
        if (supply.voltage === undefined || supply.voltage === taken) continue;
        const given = formatQuantity(supply.voltage, 'voltage');
        report({
          at: placeOf(device.item, ['supply']),
          message: `${asName(device.name)} takes ${formatQuantity(taken, 'voltage')}, and ${asName(supply.device.name)} gives ${given}. Take a supply that belongs to it.`,
          acceptAt: [device.name, supply.device.name],
          related: [{ at: placeOf(supply.device.item, ['supply']), message: 'the supply' }],
          fixes: () =>
            fixOf(`Say that ${asName(device.name)} takes ${given}`, setValue(device.item, ['supply'], given)),
        });
      }
    }
  },
};

export const examples: readonly Example[] = [
  {
    bad: `
devices:
  chimney-aerial: {kind: aerial}
  mast-amp: {kind: amplifier, gain: 20 dB, noise-figure: 2 dB, powered-by: out, supply: 12 V, current: 60 mA}
#                                                                                       ^^^^ mast-amp takes 12 V, and loft-supply gives 24 V.
  loft-supply: {kind: power-inserter, supply: 24 V, current: 200 mA}
cables:
  - {from: chimney-aerial, to: mast-amp/in, type: coax-6, length: 2 m}
  - {from: mast-amp/out, to: loft-supply/aerial, type: coax-6, length: 10 m, core: copper}
`,
    fixed: `
devices:
  chimney-aerial: {kind: aerial}
  mast-amp: {kind: amplifier, gain: 20 dB, noise-figure: 2 dB, powered-by: out, supply: 24 V, current: 60 mA}
  loft-supply: {kind: power-inserter, supply: 24 V, current: 200 mA}
cables:
  - {from: chimney-aerial, to: mast-amp/in, type: coax-6, length: 2 m}
  - {from: mast-amp/out, to: loft-supply/aerial, type: coax-6, length: 10 m, core: copper}
`,
  },
];
