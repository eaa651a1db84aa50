import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';
import { placeOf } from '../../site/item.ts';
import { durationLike } from '../../text/quantity.ts';
import { textAt } from '../../text/syntax.ts';
import { asName } from '../../text/words.ts';

export const keepBelowSegment: Rule = {
  id: 'keep-below-segment',
  severity: 'error',
  showAfter: 'value',
  summary: 'A recording is kept for less time than one of its files covers.',
  why: `A file is deleted as a whole, and not while it is being written. If it covers more time than footage is kept, it is due
for deletion when it ends, and nothing is left to watch. Keep footage longer, or make shorter files.`,
  source: 'Common practice',
  check({ site }: RuleContext, report: Report): void {
    for (const { item, name, segment, keep } of site.recordings) {
      if (segment === undefined || keep === undefined || keep >= segment) continue;
      const [kept, lasts] = [
        durationLike(keep, textAt(item.data, ['keep'])),
        durationLike(segment, textAt(item.data, ['segment'])),
      ];
      report({
        at: placeOf(item, ['keep']),
        message: `${asName(name)} is kept for ${kept}, and each file lasts ${lasts}. Keep it longer, or make shorter files.`,
        acceptAt: [name],
        related: [{ at: placeOf(item, ['segment']), message: 'how long a file lasts' }],
      });
    }
  },
};

export const examples: readonly Example[] = [
  {
    bad: `
recordings:
  paddock: {stream: paddock, volume: archive, segment: 1 h, keep: 30 min, file: "paddock/%Y-%m-%d_%H-%M-%S%z.mp4"}
#                                                                 ^^^^^^ paddock is kept for 30 min, and each file lasts 1 h
`,
    good: `
recordings:
  paddock: {stream: paddock, volume: archive, segment: 60 s, keep: 30 min, file: "paddock/%Y-%m-%d_%H-%M-%S%z.mp4"}
`,
  },
];
