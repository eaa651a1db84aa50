import { Command, Option } from 'commander';
import { check } from '../check.ts';
import type { Severity } from '../site/model.ts';
import { CannotDo } from '../machine/cannot-do.ts';
import { count, list } from '../text/words.ts';
import { EXIT_STATUS } from './exit-status.ts';
import { FORMATS, GRAVITY } from './format/formats.ts';
import { print as printText } from './print.ts';
import { type PlacedFindings, placed } from './placed.ts';
import { type SiteOnDisk, readSites, shownPath, siteWithInput } from './sites.ts';
import { checkAgain } from './watch.ts';

interface Options {
  readonly format: string;
  readonly failOn: Severity;
  readonly stdinFilename?: string;
  readonly watch?: boolean;
}

export function checkCommand(): Command {
  return new Command('check')
    .description('Print what will not work, why, and what to do.')
    .argument(
      '[FOLDER...]',
      'folders of *.site.yaml files, a site each (default: the working folder); a file means its folder',
    )
    .addOption(new Option('--format <format>', 'how to print').choices(Object.keys(FORMATS)).default('text'))
    .addOption(
      new Option('--fail-on <severity>', 'exit with 1 at this severity or above')
        .choices([...GRAVITY].reverse())
        .default('error'),
    )
    .addOption(
      new Option(
        '--stdin-filename <file>',
        'take this file from standard input, and the others from FOLDER, or else from its own folder',
      ),
    )
    .addOption(new Option('--watch', 'check again whenever a file changes, until Ctrl+C').conflicts('stdinFilename'))
    .addHelpText(
      'after',
      `
Examples:
  plumbline check samples/harrow-lane
  plumbline check --watch
  plumbline check --fail-on warning site-a site-b
  plumbline check --format sarif . > plumbline.sarif
  plumbline check --format junit . > plumbline.xml
  plumbline check --stdin-filename cables.site.yaml < draft.yaml

${EXIT_STATUS}`,
    )
    .action(async (folders: string[], options: Options) => {
      if (options.watch === true) {
        if (options.format !== 'text') throw new CannotDo(`--watch prints text for a person, not ${options.format}.`);
        process.exitCode = await checkAgain(folders, (sites) => print(sites, options));
        return;
      }
      const { stdinFilename } = options;
      const sites = stdinFilename === undefined ? readSites(folders) : [await siteWithInput(stdinFilename, folders)];
      process.exitCode = print(sites, options);
    });
}

/** Prints the findings, and returns the exit status. */
function print(sites: readonly SiteOnDisk[], { format, failOn, watch }: Options): number {
  const found = sites.flatMap(({ folder }) => placed(check(folder)));
  const files = sites.flatMap(({ folder }) => folder.files.map(({ uri }) => shownPath(uri)));
  const threshold = GRAVITY.indexOf(failOn);
  const fails: PlacedFindings['fails'] = ({ severity }) => GRAVITY.indexOf(severity) >= threshold;
  const isForPerson = format === 'text' && (watch === true || process.stdout.isTTY);
  printText(
    isForPerson && found.length === 0 ? nothingFound(sites) : (FORMATS[format]?.({ found, files, fails }) ?? ''),
  );
  return found.some(fails) ? 1 : 0;
}

/** Printed on a terminal only: for a program, no output means no findings. */
function nothingFound(sites: readonly SiteOnDisk[]): string {
  const names = sites.map(({ folder }) => folder.site().name).filter((name) => name !== undefined);
  const items = sites.reduce((sum, { folder }) => sum + folder.items.length, 0);
  const files = sites.reduce((sum, { folder }) => sum + folder.size, 0);
  const what = names.length === sites.length ? `${list(names)}: ` : '';
  return `${what}nothing found in ${count(items, 'entry', 'entries')} of ${count(files, 'file', 'files')}.\n`;
}
