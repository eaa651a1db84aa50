import { Command, Option } from 'commander';
import { check } from '../check.ts';
import { type Comparison, type Side, compare } from '../compare/compare.ts';
import { comparisonPage } from '../compare/page.ts';
import { comparisonText } from '../compare/text.ts';
import { CannotDo } from '../machine/cannot-do.ts';
import { siteAtRevision } from '../machine/git.ts';
import type { SiteFolder } from '../site/folder.ts';
import type { Severity } from '../site/model.ts';
import { GRAVITY } from './format/formats.ts';
import { visibleJson } from './format/json.ts';
import { print } from './print.ts';
import { readSite } from './sites.ts';

interface Options {
  readonly against?: string;
  readonly format: string;
  readonly failOn?: Severity;
}

const FORMATS = ['text', 'json', 'html'];

export function compareCommand(): Command {
  return new Command('compare')
    .description(
      'Print what changes from one plan to another: findings, what users get, loads, power, what to set, the work, and what to buy.',
    )
    .argument('<BEFORE>', 'the folder of the earlier plan; with --against, of the later one')
    .argument('[AFTER]', 'the folder of the later plan')
    .option('--against <revision>', 'compare one folder with what it was in a revision of git, such as HEAD or v1.2')
    .addOption(new Option('--format <format>', 'how to print').choices(FORMATS).default('text'))
    .addOption(
      new Option('--fail-on <severity>', 'exit with 1 where a finding of this severity or above is new').choices(
        [...GRAVITY].reverse(),
      ),
    )
    .addHelpText(
      'after',
      `
A device that was renamed is known by its MAC address, its address, or the label of its cable. Order, comments and files
make no difference. The working tree of git is only read.

Examples:
  plumbline compare home home-next
  plumbline compare home --against HEAD
  plumbline compare . --against v1.2 --fail-on error --format json`,
    )
    .action((first: string, second: string | undefined, options: Options) => {
      const { before, after, than } = sides(first, second, options.against);
      const compared = compare(before, after);
      print(shown(compared, after, than, options.format));
      const { failOn } = options;
      if (failOn !== undefined && compared.findings.new.some(({ severity }) => isAtLeast(severity, failOn)))
        process.exitCode = 1;
    });
}

function isAtLeast(severity: Severity, threshold: Severity): boolean {
  return GRAVITY.indexOf(severity) >= GRAVITY.indexOf(threshold);
}

function sides(
  first: string,
  second: string | undefined,
  against: string | undefined,
): { before: Side; after: Side; than: string } {
  if (against !== undefined) {
    if (second !== undefined) throw new CannotDo('Give two folders, or one with --against, not both.');
    const now = readSite(first).folder;
    return { ...checkedSides(siteAtRevision(first, against), now), than: against };
  }
  if (second === undefined) throw new CannotDo('Say what to compare with: a second folder, or --against REVISION.');
  return { ...checkedSides(readSite(first).folder, readSite(second).folder), than: first };
}

/** Both sites checked; where their texts are equal, one check is that of both. */
export function checkedSides(before: SiteFolder, after: SiteFolder): { before: Side; after: Side } {
  const checked = check(before);
  return { before: checked, after: hasSameTexts(before, after) ? checked : check(after) };
}

function hasSameTexts({ files: before }: SiteFolder, { files: after }: SiteFolder): boolean {
  return (
    before.length === after.length &&
    before.every(({ text, unreadable }, index) => {
      const other = after[index];
      return text === other?.text && unreadable === undefined && other.unreadable === undefined;
    })
  );
}

function shown(compared: Comparison, after: Side, than: string, format: string): string {
  if (format === 'json') return `${visibleJson(compared)}\n`;
  if (format === 'html') return comparisonPage(compared, after.plan.site.name ?? 'Site without a name', than);
  return comparisonText(compared);
}
