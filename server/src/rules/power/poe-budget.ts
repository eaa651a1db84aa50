import { placeOf } from '../../site/item.ts';
import { portName } from '../../site/model.ts';
import { count, few, watts, asName } from '../../text/words.ts';
import { placeOfPort } from '../../site/places.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';

/** The most draws, the greatest first, that are listed. */
const SHOWN = 3;

export const poeBudget: Rule = {
  id: 'poe-budget',
  severity: 'error',
  summary: 'A switch must feed more than its PoE budget.',
  why: `A switch sets aside for each device what its power class may take from the port, cable loss included. When the
budget is used up, the next device does not start, or a port of lower priority is turned off. Move devices to another
switch, take one with a larger budget, or feed some from their own supplies. Use listed equipment only, mind that
bundles of cables that carry power get warm, and follow local codes.`,
  source: 'IEEE 802.3 clauses 33 and 145: power of the classes at the switch (secondary)',
  check({ plan }: RuleContext, report: Report): void {
    for (const { device, budget, allotted, feeds } of plan.poe) {
      if (budget === undefined || allotted <= budget) continue;
      const greatest = [...feeds].sort((a, b) => b.allotted - a.allotted);
      const named = greatest.map(({ to, allotted }) => `${to.device.name} ${watts(allotted)}`);
      report({
        at: placeOf(device.item, ['poe-budget']),
        message:
          `${asName(device.name)} must feed ${watts(allotted)} to ${count(feeds.length, 'device')}, ${watts(allotted - budget)} more ` +
          `than its budget of ${watts(budget)}: ${few(named, SHOWN)}. Move some to another switch, or take one with ` +
          'a larger budget.',
        acceptAt: [device.name],
        related: greatest.slice(0, SHOWN).map(({ from, to, class: own, allotted }) => ({
          at: placeOfPort(to, 'poe'),
          message: `${asName(to.device.name)} at ${portName(from)}: class ${own.class}, ${watts(allotted)}`,
        })),
      });
    }
  },
};

export const examples: readonly Example[] = [
  {
    bad: `
devices:
  core: {kind: switch, poe-budget: 40 W, ports: {1-8: {poe: at}}}
#                                  ^^^^ core must feed 45.4 W to 2 devices, 5.4 W more than its budget of 40 W
  paddock-cam: {kind: camera, poe: {class: 3}}
  yard-cam: {kind: camera, poe: {class: 4}}
cables:
  - {from: core/1, to: paddock-cam}
  - {from: core/2, to: yard-cam}
`,
    good: `
devices:
  core: {kind: switch, poe-budget: 60 W, ports: {1-8: {poe: at}}}
  paddock-cam: {kind: camera, poe: {class: 3}}
  yard-cam: {kind: camera, poe: {class: 4}}
cables:
  - {from: core/1, to: paddock-cam}
  - {from: core/2, to: yard-cam}
`,
  },
];
