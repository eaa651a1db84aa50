import { namePlace } from '../../site/item.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';
import { asName } from '../../text/words.ts';

export const powerIntoAerial: Rule = {
  id: 'power-into-aerial',
  severity: 'warning',
  summary: 'A supply puts current into an aerial.',
  why: `Many aerials are a short circuit for direct current: the supply overheats or switches off. Put the inserter where
an amplifier takes the current, or a DC block in front of the aerial.`,
  source: 'common practice, no source',
  check({ plan }: RuleContext, report: Report): void {
    for (const { aerial, supply } of plan.television.directCurrent.intoAerials)
      report({
        at: namePlace(aerial.item),
        message: `${asName(supply.device.name)} puts current into ${asName(aerial.name)}, and nothing on the way takes it. Put a part without power pass in between, such as a DC block.`,
        acceptAt: [aerial.name, supply.device.name],
      });
  },
};

export const examples: readonly Example[] = [
  {
    bad: `
devices:
  chimney-aerial: {kind: aerial}
# ^^^^^^^^^^^^^^ loft-supply puts current into chimney-aerial, and nothing on the way takes it.
  loft-supply: {kind: power-inserter, supply: 12 V, current: 200 mA}
cables:
  - {from: chimney-aerial, to: loft-supply/aerial, type: coax-6, length: 12 m}
`,
    good: `
devices:
  chimney-aerial: {kind: aerial}
  mast-amp: {kind: amplifier, gain: 20 dB, noise-figure: 2 dB, powered-by: out, supply: 12 V, current: 60 mA}
  loft-supply: {kind: power-inserter, supply: 12 V, current: 200 mA}
cables:
  - {from: chimney-aerial, to: mast-amp/in, type: coax-6, length: 1 m}
  - {from: mast-amp/out, to: loft-supply/aerial, type: coax-6, length: 12 m}
`,
  },
];
