import { placeOf } from '../../site/item.ts';
import { count, kilograms, asName } from '../../text/words.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';

export const rackWeight: Rule = {
  id: 'rack-weight',
  severity: 'error',
  summary: 'What is in a rack weighs more than the rack bears.',
  why: `Rails bend, and a cabinet comes off its wall. Take something out, or take a rack that bears more and, on a wall, a
wall and fixings that bear both. What is heavy goes to the bottom; lift it with two people. For what a wall bears, ask
somebody who is trained for it; local codes decide.`,
  source: 'Common practice; what a rack bears is in its papers',
  check({ plan }: RuleContext, report: Report): void {
    for (const { rack, weight, placed, elsewhere, unweighed } of plan.racks) {
      if (rack.bears === undefined || weight <= rack.bears) continue;
      const weighed = placed.length + elsewhere.length - unweighed.length;
      const more =
        unweighed.length === 0 ? '' : `, without ${count(unweighed.length, 'device')} whose weight is not said`;
      report({
        at: placeOf(rack.item, ['bears']),
        acceptAt: [rack.name],
        message:
          `${asName(rack.name)} bears ${kilograms(rack.bears)}, and ${count(weighed, 'device')} in it ${weighed === 1 ? 'weighs' : 'weigh'} ` +
          `${kilograms(weight)}${more}. Take something out, or take a rack that bears more.`,
      });
    }
  },
};

export const examples: readonly Example[] = [
  {
    bad: `
racks: {cupboard: {units: 12, bears: 20 kg}}
#                                    ^^^^^ cupboard bears 20 kg, and 2 devices in it weigh 22.5 kg, without 1 device whose weight is not said
devices:
  recorder: {kind: server, rack: cupboard, unit: 2, units: 2, weight: 18 kg}
  core: {kind: switch, rack: cupboard, unit: 5, weight: 4.5 kg}
  panel-a: {kind: patch-panel, rack: cupboard, unit: 6}
`,
    good: `
racks: {cupboard: {units: 12, bears: 30 kg}}
devices:
  recorder: {kind: server, rack: cupboard, unit: 2, units: 2, weight: 18 kg}
  core: {kind: switch, rack: cupboard, unit: 5, weight: 4.5 kg}
`,
  },
];
