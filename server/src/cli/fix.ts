import { dirname } from 'node:path';
import { Command } from 'commander';
import { pathOf } from '../machine/disk.ts';
import { clearLeftovers } from '../machine/leftovers.ts';
import { type Rewritten, rewrite } from '../machine/rewrite.ts';
import { fixAll } from '../check.ts';
import { leftBlanks } from '../report/answer/left.ts';
import { count } from '../text/words.ts';
import { lineDiff } from './line-diff.ts';
import { print, printMessage } from './print.ts';
import { readSites, shownPath } from './sites.ts';

export function fixCommand(): Command {
  return new Command('fix')
    .description('Apply the safe fixes: those that have one sensible way and change no meaning.')
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
      let goesOn = false;
      const changed: Rewritten[] = [];
      const left: string[] = [];
      const paths = new Set<string>();
      for (const { folder } of readSites(folders)) {
        for (const { uri } of folder.files) paths.add(dirname(pathOf(uri)));
        const before = new Map(folder.files.map(({ uri, text }) => [uri, text]));
        const fixed = fixAll(folder);
        applied += fixed.fixes;
        goesOn ||= fixed.goesOn;
        // Where fixes go on, what is left is not known yet.
        if (!fixed.goesOn) left.push(...leftBlanks(fixed.checked().plan).map(({ words }) => `  ${words}\n`));
        for (const [uri, after] of fixed.texts) {
          const old = before.get(uri) ?? '';
          if (old !== after) changed.push({ uri, before: old, after });
        }
      }
      if (options.dryRun === true)
        for (const { uri, before, after } of changed) print(lineDiff(shownPath(uri), before, after));
      else {
        // Also where nothing is written: the one that was killed may have done all.
        for (const path of paths) clearLeftovers(path);
        rewrite(changed);
      }
      printMessage(
        `${count(applied, 'safe fix', 'safe fixes')} ${options.dryRun === true ? 'would be applied' : 'applied'}.\n`,
      );
      if (goesOn) printMessage('A site so large is fixed in several runs: run it again to go on.\n');
      if (left.length > 0) printMessage(`Left as ‘auto’:\n${left.join('')}`);
    });
}
