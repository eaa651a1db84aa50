import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';
import { placeOfPower } from '../../site/places.ts';
import { few, asName } from '../../text/words.ts';

/** The most devices of a loop that are named. */
const SHOWN = 4;

export const powerLoop: Rule = {
  id: 'power-loop',
  severity: 'error',
  summary: 'Devices feed each other in a circle, so that no mains reaches them.',
  why: `Power has to come from somewhere: each device hangs on one that hangs on the mains. In a circle none of them does,
and none of their figures means anything. Say at one of them what it is really plugged into, or leave out \`from\` where
that is a socket of the mains.`,
  source: 'physics',
  check({ plan, site }: RuleContext, report: Report): void {
    if (!site.devices.some(({ ownPower }) => ownPower?.from !== undefined) && !isChained(plan.poe)) return;
    for (const circle of plan.supply().feeding.circles) {
      const [first] = circle;
      if (first === undefined) continue;
      const others = circle.slice(1).map(({ name }) => name);
      report({
        at: placeOfPower(first),
        message:
          others.length === 0
            ? `${asName(first.name)} is fed from itself. Say what its plug is in, or leave \`from\` out for the mains.`
            : `${asName(first.name)} is fed from itself, by way of ${few(others, SHOWN)}. Say at one of them what its plug is in, ` +
              'or leave `from` out for the mains.',
        acceptAt: circle.map(({ name }) => name),
        related: circle
          .slice(1, 1 + SHOWN)
          .map((device) => ({ at: placeOfPower(device), message: `${asName(device.name)} is in the circle` })),
      });
    }
  },
};

/** Whether a device that feeds others by PoE is itself fed by PoE. */
function isChained(poe: RuleContext['plan']['poe']): boolean {
  const feeders = new Set(poe.flatMap(({ device, feeds }) => (feeds.length === 0 ? [] : [device])));
  return poe.some(({ feeds }) => feeds.some(({ to }) => feeders.has(to.device)));
}

export const examples: readonly Example[] = [
  {
    bad: `
devices:
  ups-1: {kind: ups, rated: 700 VA, power: {from: ups-2}}
#                                          ^^^^^^^^^^^^^ ups-1 is fed from itself, by way of ups-2
  ups-2: {kind: ups, rated: 700 VA, power: {from: ups-1}}
`,
    good: `
devices:
  ups-1: {kind: ups, rated: 700 VA}
  ups-2: {kind: ups, rated: 700 VA}
`,
  },
];
