import { visible } from '../../text/visible.ts';
import { placeInFile } from '../../site/folder.ts';
import type { Example, Report, Rule, RuleContext } from '../../lint/rule.ts';

export const unreadableFile: Rule = {
  id: 'unreadable-file',
  severity: 'error',
  due: 'now',
  summary: 'A file of the site cannot be read.',
  why: `What it declares is missing from the site, so loads come out too low. Names that it may declare are
not reported as unknown meanwhile. Look at its permissions, its encoding (UTF-8) and its size.`,
  check({ files }: RuleContext, report: Report): void {
    for (const file of files) {
      if (file.unreadable === undefined) continue;
      report({
        at: placeInFile(file, { start: 0, end: 0 }),
        message: `This file cannot be read: ${visible(file.unreadable)}. What it declares is missing from the site.`,
        about: [],
      });
    }
  },
};

export const examples: readonly Example[] = [];
