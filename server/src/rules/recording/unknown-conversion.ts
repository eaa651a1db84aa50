import { placeOf } from '../../site/item.ts';
import { list } from '../../text/words.ts';
import { filePatternOf } from '../../recordings/file-pattern.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';

export const unknownConversion: Rule = {
  id: 'unknown-conversion',
  severity: 'error',
  showAfter: 'value',
  summary: 'A file pattern has a conversion that strftime does not know.',
  why: `The result differs from system to system: the letters as they are, or nothing. Write a literal percent sign
twice.`,
  source: 'strftime(3) of Linux (glibc): C99, POSIX and glibc conversions',
  check({ site }: RuleContext, report: Report): void {
    for (const recording of site.recordings) {
      const { item, name } = recording;
      const unknown = filePatternOf(recording)?.unknown ?? [];
      if (unknown.length === 0) continue;
      report({
        at: placeOf(item, ['file']),
        message:
          `strftime has no ${list(unknown, 'or')}, so the name differs from system to system. Use another ` +
          'conversion, or write %% for a percent sign.',
        acceptAt: [name],
        entails: [item],
      });
    }
  },
};

export const examples: readonly Example[] = [
  {
    bad: `
recordings:
  paddock: {stream: paddock, volume: archive, segment: 60 s, file: "paddock/%Y-%m-%d_%H-%M-%S_%Q.mp4"}
# want 68-102 strftime has no %Q
`,
    good: `
recordings:
  paddock: {stream: paddock, volume: archive, segment: 60 s, file: "paddock/%Y-%m-%d_%H-%M-%S_100%%.mp4"}
`,
  },
];
