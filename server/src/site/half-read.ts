/** Whether an item is only half read, because its syntax is at fault. */

import { perObject } from '../memo.ts';
import { leastWhere } from '../text/bisect.ts';
import type { Piece } from '../text/cut.ts';
import type { SyntaxProblem } from '../text/parse.ts';
import { type Item, type Place, contentOf, itemsInOrder, itemStart } from './item.ts';

/** Whether no fault of its syntax leaves an item half read; a duplicate key does not. */
export function isSound(item: Item): boolean {
  return !unsoundOf(item.piece).has(item);
}

/** Whether a place is in an item that is half read: whatever looks wrong there may only be half typed. */
export function isHalfRead({ piece, start }: Place): boolean {
  if (faultsOf(piece).length === 0) return false;
  return piece.role === 'item' || itemsAt(piece, start).some((item) => !isSound(item));
}

const unsoundOf = perObject(
  (piece: Piece): ReadonlySet<Item> => new Set(faultsOf(piece).flatMap(({ start }) => itemsAt(piece, start))),
);

function itemsAt(piece: Piece, offset: number): Item[] {
  const items = itemsInOrder(piece);
  const found: Item[] = [];
  const behind = leastWhere(0, items.length, (index) => itemStart(items[index]) > offset);
  for (let index = behind - 1; index >= 0; index--) {
    const item = items[index];
    if (item === undefined || !isIn(item, offset)) break;
    found.push(item);
  }
  return piece.role === 'item' ? [...items] : found;
}

const faultsOf = perObject((piece: Piece): readonly SyntaxProblem[] => {
  const { problems } = contentOf(piece).tree;
  return problems.length === 0 ? problems : problems.filter(({ code }) => code !== 'duplicate-key');
});

/** An item ends where its text does, or behind its last character where another follows. */
function isIn(item: Item, offset: number): boolean {
  return itemStart(item) <= offset && offset <= item.node.end + 1;
}
