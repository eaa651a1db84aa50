import { nodeAt, remove } from '../../site/edit.ts';
import { placeOf } from '../../site/item.ts';
import { acceptAtItem } from '../../site/accept-at.ts';
import { shapeProblems } from '../../site/shape-problems.ts';
import { shown, whatIsAt } from '../../site/shape-words.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';

export const repeatedValue: Rule = {
  id: 'repeated-value',
  severity: 'warning',
  isSlip: true,
  showAfter: 'value',
  summary: 'A list names the same thing twice.',
  why: `A device receives a stream once, and a trunk carries a VLAN once: the second mention changes nothing, and may
stand where another name was meant.`,
  check({ site }: RuleContext, report: Report): void {
    for (const {
      item,
      problem: { keyPath, found },
    } of shapeProblems(site, 'repeated')) {
      const around = keyPath.slice(0, -1);
      const list = nodeAt(item, around);
      const first =
        list?.kind === 'sequence' ? list.items.findIndex((node) => node.kind === 'scalar' && node.value === found) : -1;
      report({
        at: placeOf(item, keyPath),
        message: `${shown(found)} is already in ${whatIsAt(item, around)}. Remove it, or name what you meant.`,
        acceptAt: acceptAtItem(item),
        ...(first >= 0 && { related: [{ at: placeOf(item, [...around, first]), message: 'first here' }] }),
        fixes: () => {
          const edit = remove(item, keyPath);
          return edit === undefined ? [] : [{ title: 'Take it out', safe: true, edits: [edit] }];
        },
      });
    }
  },
};

export const examples: readonly Example[] = [
  {
    bad: `
streams:
  paddock: {source: paddock-cam, receivers: [recorder, kitchen-screen, recorder]}
#                                                                      ^^^^^^^^ recorder is already in receivers
`,
    fixed: `
streams:
  paddock: {source: paddock-cam, receivers: [recorder, kitchen-screen]}
`,
  },
];
