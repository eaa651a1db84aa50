import { placeOf } from '../../site/item.ts';
import { acceptAtItem } from '../../site/accept-at.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';

export const coaxBetweenBuildings: Rule = {
  id: 'coax-between-buildings',
  severity: 'warning',
  summary: 'A coax joins two buildings.',
  why: `Its screen ties their earths together, and can carry a current that is dangerous to touch and hot enough to burn; a
stroke of lightning near one building goes into the other. Take fibre and a tuner on the network, or have a licensed
person fit an isolator. Never bond a screen in one building to the earth of another by yourself.`,
  source: 'IEC 60728-11, from memory; local codes prevail',
  check({ plan }: RuleContext, report: Report): void {
    for (const { cable, a, b, through } of plan.television.runs) {
      const [here, there] = [a.device.building, b.device.building];
      if (here === undefined || there === undefined || here === there) continue;
      if ([a.device, b.device, ...through].some(({ kind }) => kind === 'isolator')) continue;
      report({
        at: placeOf(cable.item, ['from']),
        message:
          `This coax goes from ${here} to ${there} and ties their earths together. Take fibre and a tuner on the ` +
          'network, or have a licensed person fit an isolator.',
        acceptAt: acceptAtItem(cable.item),
      });
    }
  },
};

export const examples: readonly Example[] = [
  {
    bad: `
devices:
  house-splitter: {kind: splitter, ways: 2, loss: 4 dB, building: farmhouse, terminated: [out-2]}
  stable-outlet: {kind: outlet, building: stable}
cables:
  - {from: house-splitter/out-1, to: stable-outlet/in, type: coax-11, length: 60 m}
#          ^^^^^^^^^^^^^^^^^^^^ This coax goes from farmhouse to stable and ties their earths together.
`,
    good: `
devices:
  house-splitter: {kind: splitter, ways: 2, loss: 4 dB, building: farmhouse, terminated: [out-2]}
  stable-outlet: {kind: outlet, building: stable}
  yard-isolator: {kind: isolator, building: farmhouse}
cables:
  - {from: house-splitter/out-1, to: stable-outlet/in, type: coax-11, length: 60 m, through: [yard-isolator]}
`,
  },
];
