import { REASON } from '../../lint/reason.ts';
import { placeOf } from '../../site/item.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';

export const reasonMissing: Rule = {
  id: 'reason-missing',
  severity: 'warning',
  isSlip: true,
  showAfter: 'item',
  summary: 'An acceptance says no reason.',
  why: `Whoever reads the site in a year, perhaps you, wants to know whether it still holds. Write why the finding does no
harm here, or take the acceptance out.`,
  check({ site }: RuleContext, report: Report): void {
    for (const { item, keyPath, rule, at, because } of site.lint.acceptances) {
      if (because.trim() !== '' && because.trim() !== REASON) continue;
      report({
        at: placeOf(item, [...keyPath, 'because']),
        message: `Why is ${rule} accepted at ${at}? Write the reason.`,
        acceptAt: [at],
      });
    }
  },
};

export const examples: readonly Example[] = [
  {
    bad: `
devices:
  core: {kind: switch, ports: {1-8: {speed: 1 Gb/s}}}
  paddock-cam: {kind: camera, poe: {class: 3}}
cables:
  - {from: core/1, to: paddock-cam, type: cat6, length: 38 m}
lint:
  accept:
    - {rule: poe-missing, at: paddock-cam, because: say why}
#                                                   ^^^^^^^ Why is poe-missing accepted at paddock-cam?
`,
    good: `
devices:
  core: {kind: switch, ports: {1-8: {speed: 1 Gb/s}}}
  paddock-cam: {kind: camera, poe: {class: 3}}
cables:
  - {from: core/1, to: paddock-cam, type: cat6, length: 38 m}
lint:
  accept:
    - {rule: poe-missing, at: paddock-cam, because: an injector in the tack room feeds it}
`,
  },
];
