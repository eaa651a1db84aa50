/** What is at an offset of a file: the item, and the key path to the key or value in it. */

import type { Piece } from '../text/cut.ts';
import { isEmpty } from '../text/parse.ts';
import { type Node, type KeyPath, keyText } from '../text/syntax.ts';
import { type SiteText, pieceStart } from './folder.ts';
import { type Item, contentOf } from './item.ts';
import { leastWhere } from '../text/bisect.ts';

export interface Location {
  readonly item: Item;
  /** From the item to what is at the place; empty for the item itself. */
  readonly keyPath: KeyPath;
  /** Whether the place is in a key or in a value; the item's own name is a key. */
  readonly part: 'key' | 'value';
}

/** The piece that an offset of the file is in. */
export function pieceAt(file: SiteText, offset: number): Piece | undefined {
  const { pieces, starts } = file.cut;
  const index = leastWhere(1, pieces.length, (at) => (starts[at] ?? 0) > offset) - 1;
  const piece = pieces[index];
  const start = starts[index];
  if (piece === undefined || start === undefined) return undefined;
  return start <= offset && offset <= start + piece.text.length ? piece : undefined;
}

/** What an offset of the file is in, its ends included; `undefined` between items. */
export function locate(file: SiteText, offset: number): Location | undefined {
  const piece = pieceAt(file, offset);
  if (piece === undefined) return undefined;
  const at = offset - pieceStart(file, piece);
  for (const item of contentOf(piece).items) {
    const { key, node } = item;
    if (key !== undefined && key.start <= at && at <= key.end) return { item, keyPath: [], part: 'key' };
    if (isEmpty(node) || at < node.start || at > node.end) continue;
    return { item, ...within(node, at, []) };
  }
  return undefined;
}

function within(node: Node, at: number, keyPath: KeyPath): { keyPath: KeyPath; part: 'key' | 'value' } {
  if (node.kind === 'mapping') {
    for (const entry of node.entries) {
      if (entry.merged) continue;
      const below = [...keyPath, keyText(entry.key)];
      if (entry.key.start <= at && at <= entry.key.end) return { keyPath: below, part: 'key' };
      if (!isEmpty(entry.value) && entry.value.start <= at && at <= entry.value.end)
        return within(entry.value, at, below);
    }
  }
  if (node.kind === 'sequence') {
    for (const [index, item] of node.items.entries()) {
      if (item.start <= at && at <= item.end) return within(item, at, [...keyPath, index]);
    }
  }
  return { keyPath, part: 'value' };
}
