/** Markdown around text of the site. */

import { visible } from './visible.ts';

/**
 * `text` escaped so that Markdown shows it as it is: it makes no link, image, command, HTML, entity, heading, list or
 * table. Any ASCII punctuation mark may be escaped (CommonMark 0.31 §2.4, read). Marks without a meaning where they are
 * stay bare, so that names and figures can be read in the source too. Escapes inside bare addresses keep GitHub's
 * Markdown from making links of them.
 */
export function escaped(text: string): string {
  return visible(text).replace(/[!-/:-@[-`{-~]/g, (mark, at: number, line: string) =>
    meansNothing(mark, at, line) ? mark : `\\${mark}`,
  );
}

/** Marks without a meaning. */
const PLAIN: ReadonlySet<string> = new Set(['%', ',', ';', "'", '"', '?', '/', '(']);
/** Marks with a meaning only at the start of a line, for a list or an underline. */
const AT_START: ReadonlySet<string> = new Set(['+', '-', '=']);

function meansNothing(mark: string, at: number, line: string): boolean {
  if (PLAIN.has(mark)) return true;
  if (AT_START.has(mark)) return at > 0;
  const listNumber = /^\d+$/.test(line.slice(0, at));
  if (mark === ')') return !listNumber;
  // In a MAC address.
  if (mark === ':' && /[\da-f]{2}:[\da-f]{2}/.test(line.slice(Math.max(0, at - 2), at + 3))) return true;
  if (mark === ':') return /^(\s|$)/.test(line.slice(at + 1));
  if (mark === '.')
    return /^\d/.test(line.slice(at + 1))
      ? /\d$/.test(line.slice(0, at))
      : !listNumber && /^(\s|$)/.test(line.slice(at + 1));
  return false;
}

/** A table of cells in Markdown. `right` says which columns are aligned right. */
export function table(
  head: readonly string[],
  rows: readonly (readonly string[])[],
  right: readonly boolean[],
): string {
  const line = (cells: readonly string[]): string => `| ${cells.join(' | ')} |`;
  return [line(head), line(head.map((_, index) => (right[index] === true ? '--:' : ':--'))), ...rows.map(line)].join(
    '\n',
  );
}
