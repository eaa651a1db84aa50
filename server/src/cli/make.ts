import { Command } from 'commander';
import { closest } from 'fastest-levenshtein';
import { writeInto } from '../machine/write-into.ts';
import { OUTPUTS } from '../make/outputs.ts';
import type { MadeFile, Output, Refusal } from '../make/output.ts';
import { visibleLines } from '../text/visible.ts';
import { planOf } from '../plan.ts';
import { CannotDo } from '../machine/cannot-do.ts';
import { textFormat } from './format/text.ts';
import { placed } from './placed.ts';
import { sayAtFailure, print, printMessage } from './print.ts';
import { type SiteOnDisk, readSite } from './sites.ts';

interface Options {
  readonly out?: string;
  readonly site: string;
}

export function makeCommand(): Command {
  const width = Math.max(...OUTPUTS.map(({ kind }) => kind.length));
  return new Command('make')
    .description('Write the files that make the equipment match the plan. Nothing is run.')
    .argument('<KIND>', 'what to make')
    .argument('[NAME]', 'only for this device, stream …; without it, for all')
    .option('--out <folder>', 'where to write; without it, the files are printed')
    .option('--site <folder>', 'the folder of the site', '.')
    .addHelpText(
      'after',
      `
Kinds:
${OUTPUTS.map(({ kind, summary }) => `  ${kind.padEnd(width)}  ${summary}`).join('\n')}

The same site gives the same bytes. Read what is made before you use it.

Examples:
  plumbline make networkd recorder --site samples/harrow-lane
  plumbline make sdp --site home --out made

Exit status: 0, all is made; 1, something could not be made, the rest is; 2, it could not run.`,
    )
    .action((kind: string, name: string | undefined, options: Options) => {
      process.exitCode = make(outputOf(kind), name, options);
    });
}

function outputOf(kind: string): Output {
  const found = OUTPUTS.find((output) => output.kind === kind);
  if (found !== undefined) return found;
  throw new CannotDo(
    `There is no kind ${kind}. The nearest is ${closest(
      kind,
      OUTPUTS.map((output) => output.kind),
    )}.`,
  );
}

function make(output: Output, name: string | undefined, options: Options): number {
  const site = readSite(options.site);
  const plan = planOf(site.folder.site());
  const subjects = output.subjects(plan);
  if (name !== undefined && !subjects.includes(name)) throw new CannotDo(notOf(output, name, subjects));
  const { files, refused, notes } = output.make(plan, name);
  if (options.out === undefined) printFiles(files);
  else if (files.length > 0) write(options.out, files);
  printMessage(notes.map((note) => `${note}\n`).join(''));
  printMessage(told(site, refused));
  if (files.length === 0 && refused.length === 0) printMessage(`The site has nothing to make ${output.kind} of.\n`);
  return refused.length > 0 ? 1 : 0;
}

function notOf({ kind }: Output, name: string, subjects: readonly string[]): string {
  if (subjects.length === 0) return `${kind} is made for the whole site: leave ${name} out.`;
  return `${kind} cannot be made for ${name}. It can for ${subjects.join(', ')}.`;
}

/** Prints the files unchanged, or fails: the output may be redirected to a file. */
function printFiles(files: readonly MadeFile[]): void {
  const unseen = files.find(({ text }) => visibleLines(text) !== text);
  if (unseen !== undefined)
    throw new CannotDo(`${unseen.path} has characters that a terminal would act on. Write it to a folder with --out.`);
  const single = files.length === 1;
  for (const { path, text } of files) print(single ? text : `==> ${path}\n${text}\n`);
}

function write(folder: string, files: readonly MadeFile[]): void {
  const modes = files.map(({ path, text, executable }) => ({ path, text, mode: executable === true ? 0o755 : 0o644 }));
  const written = writeInto(folder, modes);
  sayAtFailure('All is written.');
  print(written.map((path) => `${path}\n`).join(''));
}

const REFUSED = { id: 'not-made', severity: 'error', summary: '', why: '' } as const;

/** The refusals, as problems at their places in the site. */
function told({ folder }: SiteOnDisk, refused: readonly Refusal[]): string {
  const diagnostics = refused.map(({ at, message }) => ({
    at,
    message,
    acceptAt: [],
    rule: REFUSED,
    severity: REFUSED.severity,
  }));
  return textFormat({ found: placed({ diagnostics, files: folder.files }), files: [], fails: () => true });
}
