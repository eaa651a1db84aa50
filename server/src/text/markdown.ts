/** Markdown around text that is not ours. */

import { visible } from './visible.ts';

/**
 * `text` so that Markdown shows it as it is: no link, image, command, HTML, entity, heading, list or table comes of
 * it. Every ASCII punctuation mark may be escaped (CommonMark 0.31 §2.4, read), so every one is but those that alone
 * mean nothing anywhere; that breaks bare addresses too, which GitHub's Markdown turns into links.
 */
export function escaped(text: string): string {
  return visible(text).replace(/[!-/:-@[-`{-~]/g, (mark) => (HARMLESS.has(mark) ? mark : `\\${mark}`));
}

const HARMLESS: ReadonlySet<string> = new Set(['%', ',', ';', "'", '"', '?', '/']);

/** A table; cells are Markdown already. Columns are aligned right where `right` says so. */
export function table(head: readonly string[], rows: readonly (readonly string[])[], right: readonly boolean[]): string {
  const line = (cells: readonly string[]): string => `| ${cells.join(' | ')} |`;
  return [line(head), line(head.map((_, index) => (right[index] === true ? '--:' : ':--'))), ...rows.map(line)].join('\n');
}
