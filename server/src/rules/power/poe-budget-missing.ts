import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';
import { namePlace } from '../../site/item.ts';
import { count, watts, asName } from '../../text/words.ts';

export const poeBudgetMissing: Rule = {
  id: 'poe-budget-missing',
  severity: 'information',
  summary: 'A switch feeds devices, but its PoE budget is not given.',
  why: `A switch shares one supply between its ports, often less than all of them may take together. When it is used up,
the next device does not start. The data sheet has the budget: give it as \`poe-budget\`, and the sum is checked.`,
  source: 'Common practice',
  check({ plan }: RuleContext, report: Report): void {
    for (const { device, budget, allotted, feeds } of plan.poe) {
      if (budget !== undefined || feeds.length === 0) continue;
      // An injector of one port shares its supply with nothing.
      if (device.ports.filter((port) => port.pse !== undefined).length === 1) continue;
      report({
        at: namePlace(device.item),
        message:
          `${asName(device.name)} must feed ${watts(allotted)} to ${count(feeds.length, 'device')}, but has no budget to check ` +
          'that against. Give its `poe-budget`.',
        acceptAt: [device.name],
      });
    }
  },
};

export const examples: readonly Example[] = [
  {
    bad: `
devices:
  core: {kind: switch, ports: {1-8: {poe: at}}}
# ^^^^ core must feed 45.4 W to 2 devices, but has no budget to check that
  paddock-cam: {kind: camera, poe: {class: 3}}
  yard-cam: {kind: camera, poe: {class: 4}}
cables:
  - {from: core/1, to: paddock-cam}
  - {from: core/2, to: yard-cam}
`,
    good: `
devices:
  core: {kind: switch, poe-budget: 60 W, ports: {1-8: {poe: at}}}
  barn: {kind: switch, ports: {1-8: {poe: at}}}
  injector: {kind: media-converter, ports: {in: {}, out: {poe: at}}}
  paddock-cam: {kind: camera, poe: {class: 3}}
  yard-cam: {kind: camera, poe: {class: 4}}
  gate-cam: {kind: camera, poe: {class: 3}}
cables:
  - {from: core/1, to: paddock-cam}
  - {from: core/2, to: yard-cam}
  - {from: injector/out, to: gate-cam}
`,
  },
];
