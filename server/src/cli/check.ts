import { Command, Option } from 'commander';
import { readSites } from './sites.ts';
import { check } from '../rules/check.ts';
import type { Severity } from '../site/model.ts';
import { placed, type Placed } from './placed.ts';
import { githubFormat } from './format/github.ts';
import { jsonFormat } from './format/json.ts';
import { sarifFormat } from './format/sarif.ts';
import { textFormat } from './format/text.ts';

/** Turns what was found into a format's text. */
export type Format = (found: readonly Placed[]) => string;

const FORMATS: Readonly<Record<string, Format>> = { text: textFormat, json: jsonFormat, sarif: sarifFormat, github: githubFormat };

const GRAVITY: readonly Severity[] = ['hint', 'information', 'warning', 'error'];

export function checkCommand(): Command {
  return new Command('check')
    .description('Print what will not work, why, and what to do.')
    .argument('[FOLDER...]', 'folders of *.site.yaml files, a site each (default: the working folder)')
    .addOption(new Option('--format <format>', 'how to print').choices(Object.keys(FORMATS)).default('text'))
    .addOption(new Option('--fail-on <severity>', 'exit with 1 at this severity or above').choices([...GRAVITY].reverse()).default('error'))
    .addHelpText('after', `
Examples:
  plumbline check samples/harrow-lane
  plumbline check --format sarif . > plumbline.sarif
  plumbline check --fail-on warning site-a site-b`)
    .action((folders: string[], options: { format: string; failOn: Severity }) => {
      const found = readSites(folders).flatMap(({ folder }) => placed(check(folder)));
      process.stdout.write(FORMATS[options.format]?.(found) ?? '');
      const threshold = GRAVITY.indexOf(options.failOn);
      if (found.some(({ severity }) => GRAVITY.indexOf(severity) >= threshold)) process.exitCode = 1;
    });
}
