import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';
import { fixOf, putValue } from '../../site/edit.ts';
import { namePlace } from '../../site/item.ts';
import type { Device } from '../../site/model.ts';
import { hasShapeProblem } from '../../site/shape-problems.ts';
import { few, asName } from '../../text/words.ts';

/** The lowest usual priority besides 0, one step of 4096 (IEEE 802.1D-2004 §9.2.5). */
const CHOSEN = 4096;

export const rootByChance: Rule = {
  id: 'root-by-chance',
  severity: 'hint',
  summary: 'The root of spanning tree is left to chance.',
  why: `The switch of the lowest priority is the root, and of equal ones that of the lowest MAC address: often the
oldest. Which cable is idle follows from it, so a switch that is replaced or added may let the streams take other
cables. Give the switch in the middle, where the servers are, the lowest priority.`,
  source: 'IEEE 802.1D-2004 §17.6 and §9.2.5, from memory; measured on Open vSwitch',
  check({ site, network }: RuleContext, report: Report): void {
    const { roots, blocked } = network.topology.spanningTree;
    if (blocked.length === 0) return;
    for (const root of roots) {
      const rivals = site.devices.filter(
        (device) =>
          device !== root &&
          device.bridging &&
          device.spanningTree &&
          device.spanningTreePriority === root.spanningTreePriority,
      );
      if (rivals.length === 0 || [root, ...rivals].some(isPriorityFaulty)) continue;
      const by = root.mac !== undefined && rivals.every(({ mac }) => mac !== undefined) ? 'MAC address' : 'name, here,';
      report({
        at: namePlace(root.item),
        message:
          `${asName(root.name)} is the root of spanning tree by its ${by} alone: ${few(rivals.map(({ name }) => name))} ` +
          `${rivals.length === 1 ? 'has' : 'have'} the same priority of ${root.spanningTreePriority}. Set ` +
          `\`spanning-tree-priority: ${CHOSEN}\` at the switch in the middle.`,
        acceptAt: [root.name],
        fixes: () =>
          root.spanningTreePriority <= CHOSEN
            ? []
            : fixOf(
                `Let ${asName(root.name)} stay the root, with a priority of ${CHOSEN}`,
                ...putValue(root.item, 'spanning-tree-priority', String(CHOSEN)),
              ),
      });
    }
  },
};

/** Whether the written priority is invalid, which is reported there. */
function isPriorityFaulty({ item }: Device): boolean {
  return hasShapeProblem(item, ['spanning-tree-priority']);
}

export const examples: readonly Example[] = [
  {
    bad: `
devices:
  attic: {kind: switch, spanning-tree: true, mac: "02:00:00:00:00:99", ports: {1-8: {}}}
  barn: {kind: switch, spanning-tree: true, mac: "02:00:00:00:00:50", ports: {1-8: {}}}
  cellar: {kind: switch, spanning-tree: true, mac: "02:00:00:00:00:01", ports: {1-8: {}}}
# ^^^^^^ cellar is the root of spanning tree by its MAC address alone: attic and barn have the same priority of 32768
cables:
  - {from: attic/1, to: barn/1}
  - {from: barn/2, to: cellar/1}
  - {from: cellar/2, to: attic/2}
`,
    good: `
devices:
  attic: {kind: switch, spanning-tree: true, spanning-tree-priority: 1000, ports: {1-8: {}}}   # no priority, which is reported there
  barn: {kind: switch, spanning-tree: true, ports: {1-8: {}}}
cables:
  - {from: attic/1, to: barn/1}
  - {from: attic/2, to: barn/2}
`,
    fixed: `
devices:
  attic: {kind: switch, spanning-tree: true, mac: "02:00:00:00:00:99", ports: {1-8: {}}}
  barn: {kind: switch, spanning-tree: true, mac: "02:00:00:00:00:50", ports: {1-8: {}}}
  cellar: {kind: switch, spanning-tree: true, mac: "02:00:00:00:00:01", ports: {1-8: {}}, spanning-tree-priority: 4096}
cables:
  - {from: attic/1, to: barn/1}
  - {from: barn/2, to: cellar/1}
  - {from: cellar/2, to: attic/2}
`,
  },
];
