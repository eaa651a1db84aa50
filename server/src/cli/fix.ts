import { writeFileSync } from 'node:fs';
import { Command } from 'commander';
import { pathOf } from '../machine/disk.ts';
import { fixAll } from '../check.ts';
import { count } from '../text/words.ts';
import { lineDiff } from './line-diff.ts';
import { readSites, shownPath } from './sites.ts';

export function fixCommand(): Command {
  return new Command('fix')
    .description('Apply the fixes that are safe: those with one sensible way that changes no meaning.')
    .argument('[FOLDER...]', 'folders of *.site.yaml files, a site each (default: the working folder)')
    .option('--dry-run', 'print what would change as a diff, and write nothing')
    .addHelpText(
      'after',
      `
Examples:
  plumbline fix --dry-run samples/first-draft
  plumbline fix .`,
    )
    .action((folders: string[], options: { dryRun?: boolean }) => {
      let applied = 0;
      for (const { folder } of readSites(folders)) {
        const before = new Map(folder.files.map(({ uri, text }) => [uri, text]));
        const { texts, fixes } = fixAll(folder);
        applied += fixes;
        for (const [uri, text] of texts) {
          const old = before.get(uri) ?? '';
          if (old === text) continue;
          if (options.dryRun === true) process.stdout.write(lineDiff(shownPath(uri), old, text));
          else writeFileSync(pathOf(uri), text);
        }
      }
      process.stderr.write(
        `${count(applied, 'safe fix', 'safe fixes')} ${options.dryRun === true ? 'would be applied' : 'applied'}.\n`,
      );
    });
}
