import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';
import { powerArriving } from '../../network/poe.ts';
import { portName } from '../../site/model.ts';
import { placeOfPort } from '../../site/places.ts';
import { count, few, watts, asName } from '../../text/words.ts';

export const poePassedOn: Rule = {
  id: 'poe-passed-on',
  severity: 'error',
  summary: 'A switch that is powered by PoE must feed more than it gets.',
  why: `A switch that gets its power from another switch passes on what it does not need itself. It receives what its power
class gives after 100 m of cable; when its devices ask for more, one of them does not start, or the whole switch keeps
restarting. Feed it by a higher class or by its own supply, or feed fewer devices from it. Use
listed equipment only, and follow local codes.`,
  source: 'IEEE 802.3 clauses 33 and 145: power of the classes at the switch and at the device (secondary)',
  check({ plan }: RuleContext, report: Report): void {
    const fed = new Map(plan.poe.flatMap(({ feeds }) => feeds.map((feed) => [feed.to.device, feed] as const)));
    for (const { device, allotted, feeds } of plan.poe) {
      const by = fed.get(device);
      if (by === undefined) continue;
      const gets = powerArriving(by);
      if (allotted <= gets) continue;
      const named = feeds.map((feed) => `${feed.to.device.name} ${watts(feed.allotted)}`);
      report({
        at: placeOfPort(by.to, 'poe'),
        message:
          `${asName(device.name)} gets ${watts(gets)} from ${portName(by.from)} and must feed ${watts(allotted)} to ` +
          `${count(feeds.length, 'device')}, besides itself: ${few(named)}. Feed it by a higher class or by its own ` +
          'supply, or feed fewer from it.',
        acceptAt: [device.name, portName(by.to)],
        effects: [by.to],
        related: [{ at: placeOfPort(by.from, 'poe'), message: `${portName(by.from)} feeds it` }],
      });
    }
  },
};

export const examples: readonly Example[] = [
  {
    bad: `
devices:
  core: {kind: switch, poe-budget: 200 W, ports: {1-8: {poe: at}}}
  barn: {kind: switch, poe-budget: 60 W, ports: {1: {poe: {class: 4}}, 2-5: {poe: at}}}
#                                                         ^^^^^^^^^^ barn gets 25.5 W from core/1 and must feed 30 W
  yard-cam: {kind: camera, poe: {class: 4}}
cables:
  - {from: core/1, to: barn/1}
  - {from: barn/2, to: yard-cam}
`,
    good: `
devices:
  core: {kind: switch, poe-budget: 200 W, ports: {1-8: {poe: bt}}}
  barn: {kind: switch, poe-budget: 40 W, ports: {1: {poe: {class: 6}}, 2-5: {poe: at}}}
  yard-cam: {kind: camera, poe: {class: 4}}
cables:
  - {from: core/1, to: barn/1}
  - {from: barn/2, to: yard-cam}
`,
  },
];
