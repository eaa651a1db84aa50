import { addEntry, fixOf } from '../../site/edit.ts';
import { placeOf } from '../../site/item.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';
import { asName } from '../../text/words.ts';

export const unitWithoutRack: Rule = {
  id: 'unit-without-rack',
  severity: 'warning',
  showAfter: 'item',
  summary: 'A device has a unit, but names no rack.',
  why: `Without its rack nothing is checked of its place, and it is in no drawing: its units look free. Say which \`rack\` it
is in.`,
  source: 'Common practice',
  check({ site }: RuleContext, report: Report): void {
    for (const { item, name, mounting } of site.devices) {
      const { unit, rack } = mounting;
      if (unit === undefined || rack !== undefined) continue;
      const [only, ...others] = site.racks;
      report({
        at: placeOf(item, ['unit']),
        acceptAt: [name],
        message: `${asName(name)} is in unit ${unit}, and which rack that is in is not said: its place is not checked. Add \`rack\`.`,
        fixes: () =>
          only === undefined || others.length > 0
            ? []
            : fixOf(`Add \`rack: ${only.name}\``, addEntry(item, [], 'rack', only.name)),
      });
    }
  },
};

export const examples: readonly Example[] = [
  {
    bad: `
racks: {cupboard: {units: 12}}
devices:
  core: {kind: switch, unit: 5}
#                            ^ core is in unit 5, and which rack that is in is not said
`,
    fixed: `
racks: {cupboard: {units: 12}}
devices:
  core: {kind: switch, unit: 5, rack: cupboard}
`,
  },
];
