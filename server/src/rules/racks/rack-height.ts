import { unitWords } from '../../racks/racks.ts';
import { placeOf } from '../../site/item.ts';
import { count, asName } from '../../text/words.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';

export const rackHeight: Rule = {
  id: 'rack-height',
  severity: 'error',
  showAfter: 'item',
  summary: 'A device is in units that its rack does not have.',
  why: `A device of several units takes those from \`unit\` upwards in number. Give it a unit from which they are all in
the rack, or say how many units the rack really has.`,
  source: 'IEC 60297-3-100',
  check({ plan }: RuleContext, report: Report): void {
    for (const { rack, placed } of plan.racks) {
      const { units } = rack;
      if (units === undefined) continue;
      for (const one of placed) {
        if (one.last <= units) continue;
        const { device } = one;
        report({
          at: placeOf(device.item, ['unit']),
          acceptAt: [device.name, rack.name],
          message: `${asName(device.name)} is in ${unitWords(one)}, and ${asName(rack.name)} has ${count(units, 'unit')}. Give it a lower \`unit\`.`,
          related: [{ at: placeOf(rack.item, ['units']), message: `how many units ${asName(rack.name)} has` }],
        });
      }
    }
  },
};

export const examples: readonly Example[] = [
  {
    bad: `
racks: {cupboard: {units: 12}}
devices:
  recorder: {kind: server, rack: cupboard, unit: 12, units: 2}
#                                                ^^ recorder is in U 12–13, and cupboard has 12 units
`,
    good: `
racks: {cupboard: {units: 12}}
devices:
  recorder: {kind: server, rack: cupboard, unit: 11, units: 2}
`,
  },
];
