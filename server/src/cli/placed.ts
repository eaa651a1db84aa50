/** Findings with the file, lines and columns that people and programs see, all counted from 1. */

import { perObject } from '../memo.ts';
import type { Checked } from '../lint/check.ts';
import type { Fix } from '../site/edit.ts';
import type { Related } from '../lint/rule.ts';
import { type SiteText, spanOf } from '../site/folder.ts';
import { type Place, fileOf } from '../site/item.ts';
import type { Severity } from '../site/model.ts';
import { Lines } from '../text/lines.ts';
import { shownPath } from './sites.ts';

export interface Range {
  readonly file: string;
  readonly line: number;
  readonly column: number;
  readonly endLine: number;
  readonly endColumn: number;
}

export interface Placed extends Range {
  readonly severity: Severity;
  readonly rule: string;
  readonly message: string;
  readonly related: readonly (Range & { readonly message: string })[];
  readonly fixes: readonly PlacedFix[];
  /** The line of the finding in the file. */
  readonly source: string;
}

export interface PlacedFix {
  readonly title: string;
  readonly safe: boolean;
  readonly edits: readonly (Range & { readonly text: string })[];
}

/** The findings that the formats print. */
export interface PlacedFindings {
  readonly found: readonly Placed[];
  /** Every file that was looked at, those without a finding included. */
  readonly files: readonly string[];
  /** Whether the command fails by this finding. */
  readonly fails: (finding: Placed) => boolean;
}

/** In the order of files and lines. */
export function placed({ diagnostics, files }: Pick<Checked, 'diagnostics' | 'files'>): Placed[] {
  const byUri = new Map(files.map((file) => [file.uri, { file, lines: new Lines(file.text) }]));
  const range = (place: Place): Range => {
    const { uri } = fileOf(place);
    const known = byUri.get(uri);
    if (known === undefined) throw new Error(`${uri} is not among the files that were checked`);
    const span = spanOf(known.file, place);
    const start = known.lines.position(span.start);
    const end = known.lines.position(span.end);
    return {
      file: shownPath(uri),
      line: start.line + 1,
      column: start.character + 1,
      endLine: end.line + 1,
      endColumn: end.character + 1,
    };
  };
  const fix = ({ title, safe, edits }: Fix): PlacedFix => ({
    title,
    safe,
    edits: edits.map(({ at, text }) => ({ ...range(at), text })),
  });
  const related = ({ at, message }: Related): Range & { message: string } => ({ ...range(at), message });
  return diagnostics
    .map((diagnostic): Placed => {
      const at = range(diagnostic.at);
      return {
        ...at,
        severity: diagnostic.severity,
        rule: diagnostic.rule.id,
        message: diagnostic.message,
        related: (diagnostic.related ?? []).map(related),
        fixes: (diagnostic.fixes?.() ?? []).map(fix),
        source: lineOf(byUri.get(fileOf(diagnostic.at).uri)?.file, at.line),
      };
    })
    .sort((a, b) => (a.file < b.file ? -1 : a.file > b.file ? 1 : a.line - b.line || a.column - b.column));
}

/** A file is cut into lines once, however many findings it has. */
const linesOf = perObject((file: SiteText) => file.text.split(/\r\n|\r|\n/));

function lineOf(file: SiteText | undefined, line: number): string {
  return file === undefined ? '' : (linesOf(file)[line - 1] ?? '');
}
