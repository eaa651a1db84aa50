/** Prints the findings of an audit in the formats of `check`. */

import { Option } from 'commander';
import type { Audited } from '../../audit/audited.ts';
import { CannotDo } from '../../machine/cannot-do.ts';
import { FORMATS, GRAVITY } from '../format/formats.ts';
import { print as printText } from '../print.ts';
import { placed } from '../placed.ts';
import { type SiteOnDisk, shownPath } from '../sites.ts';
import type { Severity } from '../../site/model.ts';

export interface PrintOptions {
  readonly format: string;
  readonly failOn: Severity;
}

export const formatOption = (): Option =>
  new Option('--format <format>', 'how to print').choices(Object.keys(FORMATS)).default('text');

export const failOnOption = (): Option =>
  new Option('--fail-on <severity>', 'exit with 1 at this severity or above')
    .choices([...GRAVITY].reverse())
    .default('warning');

/** Prints, and returns the exit status. The summary is printed in the text format only. */
export function printAudit(
  { folder }: SiteOnDisk,
  { found, summary }: Audited,
  { format, failOn }: PrintOptions,
): number {
  const formatted = FORMATS[format];
  if (formatted === undefined) throw new CannotDo(`There is no format ${format}.`);
  const diagnostics = placed({ diagnostics: found, files: folder.files });
  const fails = ({ severity }: { severity: Severity }): boolean => GRAVITY.indexOf(severity) >= GRAVITY.indexOf(failOn);
  const files = folder.files.map(({ uri }) => shownPath(uri));
  printText(formatted({ found: diagnostics, files, fails }));
  if (format === 'text') printText(summary.map((line) => `${line}\n`).join(''));
  return diagnostics.some(fails) ? 1 : 0;
}
