import { visible } from '../../text/visible.ts';
import { placeInFile } from '../../site/folder.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';

export const unreadableFile: Rule = {
  id: 'unreadable-file',
  severity: 'error',
  isSlip: true,
  showAfter: 'keystroke',
  summary: 'A file of the site cannot be read.',
  why: `The site lacks what it declares, so loads come out too low; names that it may declare are not reported as
unknown meanwhile. Check its permissions, its encoding (UTF-8) and its size.`,
  check({ files }: RuleContext, report: Report): void {
    for (const file of files) {
      if (file.unreadable === undefined) continue;
      report({
        at: placeInFile(file, { start: 0, end: 0 }),
        message: `This file cannot be read: ${visible(file.unreadable)}. What it declares is missing from the site.`,
        acceptAt: [],
      });
    }
  },
};

export const examples: readonly Example[] = [];
