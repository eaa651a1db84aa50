/** Expands a selection: to the word, its entry, the mapping around it, the item, the section, the file. */

import type { Node, Span } from '../text/syntax.ts';
import { contentOf } from '../site/item.ts';
import { pieceAt } from '../site/locate.ts';
import { type SiteText, pieceStart } from '../site/folder.ts';

/** Ranges of the file around an offset, the narrowest first, each inside the next. */
export function selections(file: SiteText, offset: number): Span[] {
  const found: Span[] = [{ start: 0, end: file.text.length }];
  const add = (start: number, end: number): void => {
    const around = found[found.length - 1];
    if (around === undefined || start > offset || end < offset || start < around.start || end > around.end) return;
    if (start !== around.start || end !== around.end) found.push({ start, end });
  };
  const header = file.cut.headers.filter(({ start }) => start <= offset).pop();
  const next = file.cut.headers.find(({ start }) => start > offset);
  if (header !== undefined) add(header.start, trimmed(file.text, next?.start ?? file.text.length));
  const piece = pieceAt(file, offset);
  if (piece !== undefined) {
    const from = pieceStart(file, piece);
    const at = (span: Span): void => add(from + span.start, from + span.end);
    for (const { key, node } of contentOf(piece).items) {
      at({ start: Math.min(key?.start ?? node.start, node.start), end: Math.max(node.end, key?.end ?? 0) });
      if (key !== undefined) at(key);
      around(node, offset - from, at);
    }
  }
  return found.reverse();
}

function around(node: Node, offset: number, add: (span: Span) => void): void {
  if (offset < node.start || offset > node.end) return;
  add(node);
  if (node.kind === 'scalar') return;
  if (node.flow) add({ start: node.start + 1, end: node.end - 1 });
  if (node.kind === 'sequence') for (const item of node.items) around(item, offset, add);
  else {
    for (const { key, value, start, end, merged } of node.entries) {
      if (merged || offset < start || offset > end) continue;
      add({ start, end });
      if (offset <= key.end) add(key);
      around(value, offset, add);
    }
  }
}

function trimmed(text: string, end: number): number {
  return text.slice(0, end).trimEnd().length;
}
