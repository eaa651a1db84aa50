/** What can be folded: sections, items, collections over several lines, and runs of comment lines. */

import { Lines } from '../text/lines.ts';
import type { Node } from '../text/syntax.ts';
import { type SiteText, pieceStart } from '../site/folder.ts';
import { contentOf } from '../site/item.ts';

export interface Fold {
  /** Lines from 0; the last is folded away too. */
  readonly first: number;
  readonly last: number;
  readonly isComment: boolean;
}

export function folds(file: SiteText): Fold[] {
  const lines = new Lines(file.text);
  const byFirst = new Map<number, Fold>();
  const add = (start: number, end: number, isComment = false): void => {
    const first = lines.position(start).line;
    const last = lines.position(end).line;
    // Where two folds begin on one line, the longer is kept.
    if (last > first && last > (byFirst.get(first)?.last ?? 0)) byFirst.set(first, { first, last, isComment });
  };
  sections(file, add);
  for (const piece of file.read) {
    const from = pieceStart(file, piece);
    for (const { key, node } of contentOf(piece).items) {
      add(from + (key ?? node).start, from + node.end);
      collections(node, (start, end) => add(from + start, from + end));
    }
  }
  comments(file.text, add);
  return [...byFirst.values()].sort((a, b) => a.first - b.first);
}

/** A section ends with its last line that is neither blank nor a comment. */
function sections({ text, cut }: SiteText, add: (start: number, end: number) => void): void {
  const starts = [
    ...cut.headers.map(({ start }) => start),
    ...cut.starts.filter((_, at) => cut.pieces[at]?.role !== 'item'),
  ].sort((a, b) => a - b);
  for (const [index, start] of starts.entries()) {
    const until = starts[index + 1] ?? text.length;
    add(start, start + contentLength(text.slice(start, until)));
  }
}

function contentLength(text: string): number {
  const lines = text.split('\n');
  while (lines.length > 0 && /^\s*(#.*)?$/.test(lines[lines.length - 1] ?? '')) lines.pop();
  return lines.join('\n').trimEnd().length;
}

function collections(node: Node, add: (start: number, end: number) => void): void {
  if (node.kind === 'mapping') {
    for (const { key, value, merged } of node.entries) {
      if (merged || value.start < key.end) continue;
      if (value.kind !== 'scalar' || value.style === 'block') add(key.start, value.end);
      collections(value, add);
    }
  }
  if (node.kind === 'sequence') {
    for (const item of node.items) {
      if (item.kind !== 'scalar') add(item.start, item.end);
      collections(item, add);
    }
  }
}

function comments(text: string, add: (start: number, end: number, isComment: boolean) => void): void {
  for (const run of text.matchAll(/(?:^[ \t]*#[^\n]*\n?){2,}/gm))
    add(run.index, run.index + run[0].trimEnd().length, true);
}
