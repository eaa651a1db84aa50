import { list, asName } from '../../text/words.ts';
import { scalarText, setValue } from '../../site/edit.ts';
import { placeOf } from '../../site/item.ts';
import { begins, lettersOf, nearest, onlyNear } from '../../text/nearest.ts';
import { acceptAtItem } from '../../site/accept-at.ts';
import { shapeProblems } from '../../site/shape-problems.ts';
import { shown, subjectAt } from '../../site/shape-words.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';

export const valueNotAllowed: Rule = {
  id: 'value-not-allowed',
  severity: 'error',
  isSlip: true,
  summary: 'A value is not allowed for its key.',
  why: `The key has a fixed set of values; any other is ignored. The reference of the site language explains each of
them.`,
  check({ site }: RuleContext, report: Report): void {
    for (const {
      item,
      problem: { keyPath, found, allowed, also },
    } of shapeProblems(site, 'not-allowed')) {
      const text = shown(found);
      const near = nearest(text, allowed.map(String));
      const letters = lettersOf(text);
      const meant = also !== undefined && Object.hasOwn(also, letters) ? also[letters] : undefined;
      const only = meant === undefined ? onlyNear(text, near) : meant.length === 1 ? meant[0] : undefined;
      const names = meant ?? (only === undefined ? near.map(({ name }) => name) : [only]);
      report({
        at: placeOf(item, keyPath),
        showAfter: begins(text, allowed.map(String)) ? 'value' : 'keystroke',
        message: `${subjectAt(item, keyPath)} is ${text}${
          names.length > 0 ? `. Did you mean ${list(names, 'or')}?` : `; it can be ${list(allowed.map(String), 'or')}.`
        }`,
        acceptAt: acceptAtItem(item),
        fixes: () =>
          names.map((name) => ({
            title: `Change to ${asName(name)}`,
            safe: name === only,
            edits: [setValue(item, keyPath, scalarText(name, true))],
          })),
      });
    }
  },
};

export const examples: readonly Example[] = [
  {
    bad: `
devices:
  paddock-cam: {kind: camra}
#                     ^^^^^ kind is camra. Did you mean camera?
`,
    fixed: `
devices:
  paddock-cam: {kind: camera}
`,
  },
  {
    bad: `
devices:
  core: {kind: switch, ports: {1-8: {poe: injector}}}
#                                         ^^^^^^^^ poe is injector; it can be af, at, bt or bt-type-4.
`,
    good: `
devices:
  core: {kind: switch, ports: {1-8: {poe: at}}}
`,
  },
  {
    bad: `
streams:
  paddock: {source: paddock-cam, video: {codec: h246, bitrate: 6 Mb/s}}
#                                               ^^^^ codec is h246. Did you mean h264 or h265?
`,
    good: `
streams:
  paddock: {source: paddock-cam, video: {codec: h264, bitrate: 6 Mb/s}}
`,
  },
];
