import { Command, Option } from 'commander';
import { closest } from 'fastest-levenshtein';
import { canDraw, type Drawing, type DrawingKind, type DrawingOptions, subjectsOf } from '../draw/drawing.ts';
import { KINDS } from '../draw/kinds.ts';
import { drawingPage } from '../draw/page.ts';
import { svgFile } from '../draw/svg.ts';
import { CannotDo } from '../machine/cannot-do.ts';
import { writeFiles } from '../machine/write-files.ts';
import { type Plan, planOf } from '../plan.ts';
import { few } from '../text/words.ts';
import { sayAtFailure, print } from './print.ts';
import { measuredFor } from './draw/measured.ts';
import { readSite } from './sites.ts';

const FORMATS: Readonly<Record<string, (drawing: Drawing) => string>> = {
  svg: svgFile,
  html: (drawing) => drawingPage(drawing),
};

interface Options extends Omit<DrawingOptions, 'measured'> {
  readonly folder?: string;
  readonly now?: string;
  readonly counters?: readonly string[];
  readonly device?: string;
  readonly site: string;
  readonly format?: string;
  readonly out?: string;
}

export function drawCommand(): Command {
  const width = Math.max(...KINDS.map(({ kind }) => kind.length));
  return new Command('draw')
    .description('Draw a picture of the plan: SVG, or a page with the same as a table. Nothing is fetched or run.')
    .argument('<KIND>', 'what to draw')
    .argument('[NAME]', 'the stream, switch, VLAN … to draw')
    .option('--site <folder>', 'the folder of the site', '.')
    .addOption(
      new Option('--format <format>', 'the format; by default by the suffix of the file, or else svg').choices(
        Object.keys(FORMATS),
      ),
    )
    .option('--out <file>', 'where to write; without it, it is printed')
    .addOption(new Option('--rate <rate>', 'loads as usual, or at peak').choices(['nominal', 'peak']).default('peak'))
    .option('--vlan <name>', 'highlight this VLAN (network)')
    .option('--stream <name>', 'highlight this stream (network)')
    .option('--folder <folder>', 'where the files of the volume are, or a copy of them (recording, volume)')
    .option('--now <time>', 'for a copy, the time when it was made: ISO 8601, or `newest` (recording, volume)')
    .option('--counters <file...>', 'counters over time, as `audit counters` reads them (port)')
    .option('--device <name>', 'the device of the counters, if the files do not name it (port)')
    .addHelpText(
      'after',
      `
Kinds:
${KINDS.map(({ kind, summary }) => `  ${kind.padEnd(width)}  ${summary}`).join('\n')}

The same site gives the same bytes.

Examples:
  plumbline draw switch core --site samples/harrow-lane --out core.svg
  plumbline draw switch core --site home --format html > core.html`,
    )
    .action(async (kind: string, name: string | undefined, options: Options) => {
      await draw(kindOf(kind), name, options);
    });
}

function kindOf(kind: string): DrawingKind {
  const found = KINDS.find((one) => one.kind === kind);
  if (found !== undefined) return found;
  const all = KINDS.map((one) => one.kind);
  throw new CannotDo(`There is no picture ${kind}. The nearest is ${closest(kind, all)}; there are ${all.join(', ')}.`);
}

async function draw(kind: DrawingKind, name: string | undefined, options: Options): Promise<void> {
  const plan = planOf(readSite(options.site).folder.site());
  const subject = subjectOf(kind, plan, name);
  if (kind.narrows !== true && (options.vlan ?? options.stream) !== undefined)
    throw new CannotDo(`${kind.kind} shows all there is: leave --vlan and --stream out.`);
  for (const [what, wanted, names] of [
    ['VLAN', options.vlan, plan.site.vlanByName],
    ['stream', options.stream, plan.site.streamByName],
  ] as const)
    if (wanted !== undefined && !names.has(wanted)) throw new CannotDo(noneOf(what, wanted, [...names.keys()]));
  const format = options.format ?? (options.out?.endsWith('.html') === true ? 'html' : 'svg');
  const measured = await measuredFor(kind, plan, subject, options);
  const text = FORMATS[format]?.(kind.draw(plan, subject, { ...options, measured })) ?? '';
  if (options.out === undefined) return print(text);
  writeFiles([{ path: options.out, text }]);
  sayAtFailure('It is written.');
  print(`${options.out}\n`);
}

/** The subject of a drawing; where there is only one it need not be named. */
function subjectOf(kind: DrawingKind, plan: Plan, name: string | undefined): string {
  if (kind.isOfSite === true && name !== undefined)
    throw new CannotDo(`${kind.kind} is drawn of the whole site: leave ${name} out.`);
  const subjects = subjectsOf(kind, plan);
  const [only, another] = subjects;
  if (only === undefined) throw new CannotDo(`The site has nothing to draw ${kind.kind} of.`);
  if (name === undefined && another !== undefined)
    throw new CannotDo(`Say of which: plumbline draw ${kind.kind} NAME. There are ${few(subjects, 20)}.`);
  if (name !== undefined && !canDraw(kind, plan, name)) throw new CannotDo(noneOf(kind.kind, name, subjects));
  return name ?? only;
}

function noneOf(what: string, name: string, all: readonly string[]): string {
  if (all.length === 0) return `The site has no ${what}.`;
  return `There is no ${what} ${name} to draw. The nearest is ${closest(name, all)}; there are ${few(all, 20)}.`;
}
