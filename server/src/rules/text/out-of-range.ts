import { fixOf, setValue } from '../../site/edit.ts';
import { placeOf } from '../../site/item.ts';
import { acceptAtItem } from '../../site/accept-at.ts';
import { shapeProblems } from '../../site/shape-problems.ts';
import { subjectAt, writtenAt } from '../../site/shape-words.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';

export const outOfRange: Rule = {
  id: 'out-of-range',
  severity: 'error',
  isSlip: true,
  showAfter: 'value',
  summary: 'A number is out of range.',
  why: `The standard behind the key sets the limits: a VLAN identifier has 12 bits, a UDP port 16, a TTL 8. The equipment
accepts no number beyond them, and it is ignored here.`,
  source:
    'VLAN identifier: IEEE 802.1Q; UDP port: RFC 768; TTL: RFC 791 §3.1; bridge priority: 802.1D; all from memory',
  check({ site }: RuleContext, report: Report): void {
    for (const {
      item,
      problem: { keyPath, found, bound },
    } of shapeProblems(site, 'out-of-range')) {
      report({
        at: placeOf(item, keyPath),
        showAfter: /most|less/.test(bound) ? 'keystroke' : 'value',
        message: `${subjectAt(item, keyPath)} is ${writtenAt(item, keyPath, found)}; it is ${bound}.`,
        acceptAt: acceptAtItem(item),
        fixes: () => {
          const step = Number(/^a multiple of (\d+)$/.exec(bound)?.[1]);
          if (Number.isNaN(step) || typeof found !== 'number') return [];
          const whole = Math.round(found / step) * step;
          return fixOf(`Write ${whole}`, setValue(item, keyPath, String(whole)));
        },
      });
    }
  },
};

export const examples: readonly Example[] = [
  {
    bad: `
vlans:
  video: {id: 5000}
#             ^^^^ id is 5000; it is at most 4094.
`,
    good: `
vlans:
  video: {id: 20}
`,
  },
  {
    bad: `
devices:
  core: {kind: switch, spanning-tree: true, spanning-tree-priority: 5000}
#                                                                   ^^^^ spanning-tree-priority is 5000; it is a multiple of 4096.
`,
    fixed: `
devices:
  core: {kind: switch, spanning-tree: true, spanning-tree-priority: 4096}
`,
  },
];
