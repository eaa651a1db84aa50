import { visible } from '../../text/visible.ts';
import { list, asName } from '../../text/words.ts';
import { placeOf } from '../../site/item.ts';
import { begins, nearest, onlyNear } from '../../text/nearest.ts';
import { hasShapeProblem } from '../../site/shape-problems.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';

export const unknownRule: Rule = {
  id: 'unknown-rule',
  severity: 'warning',
  isSlip: true,
  summary: 'The lint section names a rule that does not exist.',
  why: `The setting or the acceptance has no effect. \`plumbline explain\` lists all rules.`,
  check({ site, ruleIds }: RuleContext, report: Report): void {
    for (const item of site.sections.lint) {
      for (const mention of item.names) {
        if (mention.names !== 'rules' || ruleIds.has(mention.text)) continue;
        if (hasShapeProblem(item, mention.keyPath)) continue;
        const at = placeOf(item, mention.keyPath, mention.part);
        const near = nearest(mention.text, ruleIds);
        const only = onlyNear(mention.text, near);
        const advice =
          near.length > 0
            ? `Did you mean ${list(
                near.map(({ name }) => name),
                'or',
              )}?`
            : 'plumbline explain lists all.';
        report({
          at,
          showAfter: begins(mention.text, ruleIds) ? 'value' : 'keystroke',
          message: `There is no rule ${visible(mention.text, 40)}. ${advice}`,
          acceptAt: [],
          fixes: () =>
            near.map(({ name }) => ({
              title: `Change to ${asName(name)}`,
              safe: name === only,
              edits: [{ at, text: name }],
            })),
        });
      }
    }
  },
};

export const examples: readonly Example[] = [
  {
    bad: `
lint:
  rules: {link-lode: warning}
#         ^^^^^^^^^ There is no rule link-lode. Did you mean link-load?
`,
    fixed: `
lint:
  rules: {link-load: warning}
`,
  },
  {
    bad: `
lint:
  accept:
    - {rule: ling-load, at: core/16, because: measured at peak}
#            ^^^^^^^^^ There is no rule ling-load. Did you mean link-load?
`,
    fixed: `
lint:
  accept:
    - {rule: link-load, at: core/16, because: measured at peak}
`,
  },
];
