/** Markdown around text that is not ours. */

import { visible } from './visible.ts';

/**
 * `text` so that Markdown shows it as it is: no link, image, command, HTML, entity, heading, list or table comes of
 * it. Any ASCII punctuation mark may be escaped (CommonMark 0.31 §2.4, read), so all are but those that mean nothing
 * where they stand: names and figures stay legible where Markdown is shown as it is. Escapes inside bare addresses
 * keep GitHub's Markdown from making links of them.
 */
export function escaped(text: string): string {
  return visible(text).replace(/[!-/:-@[-`{-~]/g, (mark, at: number, line: string) =>
    meansNothing(mark, at, line) ? mark : `\\${mark}`,
  );
}

const NEVER: ReadonlySet<string> = new Set(['%', ',', ';', "'", '"', '?', '/', '(']);
/** Only the first on a line, as the mark of a list or an underline. */
const INSIDE: ReadonlySet<string> = new Set(['+', '-', '=']);

function meansNothing(mark: string, at: number, line: string): boolean {
  if (NEVER.has(mark)) return true;
  if (INSIDE.has(mark)) return at > 0;
  const listNumber = /^\d+$/.test(line.slice(0, at));
  if (mark === ')') return !listNumber;
  // As in a MAC address.
  if (mark === ':' && /[\da-f]{2}:[\da-f]{2}/.test(line.slice(Math.max(0, at - 2), at + 3))) return true;
  if (mark === ':') return /^(\s|$)/.test(line.slice(at + 1));
  if (mark === '.')
    return /^\d/.test(line.slice(at + 1))
      ? /\d$/.test(line.slice(0, at))
      : !listNumber && /^(\s|$)/.test(line.slice(at + 1));
  return false;
}

/** A table; cells are Markdown already. Columns are aligned right where `right` says so. */
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
