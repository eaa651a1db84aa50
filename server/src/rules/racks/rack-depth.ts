import { placeOf } from '../../site/item.ts';
import { millimetres, asName } from '../../text/words.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';

export const rackDepth: Rule = {
  id: 'rack-depth',
  severity: 'error',
  showAfter: 'value',
  summary: 'A device is deeper than its rack.',
  why: `It stands out, or does not go in at all: the door does not close, and plugs at its back are bent against the wall.
Take a deeper rack or a device that is less deep. Count the plugs with it: leads need some 50 mm to turn.`,
  source: 'Common practice',
  check({ plan }: RuleContext, report: Report): void {
    for (const { rack, placed, elsewhere } of plan.racks) {
      if (rack.depth === undefined) continue;
      for (const device of [...placed.map((one) => one.device), ...elsewhere]) {
        const { depth } = device.mounting;
        if (depth === undefined || depth <= rack.depth) continue;
        report({
          at: placeOf(device.item, ['depth']),
          acceptAt: [device.name, rack.name],
          message: `${asName(device.name)} is ${millimetres(depth)} deep, and ${asName(rack.name)} ${millimetres(rack.depth)}. It does not fit in.`,
          related: [{ at: placeOf(rack.item, ['depth']), message: `the depth of ${asName(rack.name)}` }],
        });
      }
    }
  },
};

export const examples: readonly Example[] = [
  {
    bad: `
racks: {cupboard: {units: 12, depth: 450 mm}}
devices:
  recorder: {kind: server, rack: cupboard, unit: 2, units: 2, depth: 560 mm}
#                                                                    ^^^^^^ recorder is 560 mm deep, and cupboard 450 mm
`,
    good: `
racks: {cupboard: {units: 12, depth: 600 mm}}
devices:
  recorder: {kind: server, rack: cupboard, unit: 2, units: 2, depth: 560 mm}
`,
  },
];
