/** Whether an item is only half read, because its syntax is at fault. */

import type { Piece } from '../text/cut.ts';
import type { SyntaxProblem } from '../text/parse.ts';
import { type Item, type Place, contentOf } from './item.ts';

/** Whether no fault of its syntax leaves an item half read; a duplicate key does not. */
export function isSound(item: Item): boolean {
  const faults = faultsOf(item.piece);
  return faults.length === 0 || !faults.some((fault) => isIn(item, fault.start));
}

/** Whether a place is in an item that is half read: whatever looks wrong there may only be half typed. */
export function isHalfRead({ piece, start }: Place): boolean {
  if (faultsOf(piece).length === 0) return false;
  const items = contentOf(piece).items.filter((item) => isIn(item, start));
  return piece.role === 'item' || items.some((item) => !isSound(item));
}

function faultsOf(piece: Piece): readonly SyntaxProblem[] {
  const { problems } = contentOf(piece).tree;
  return problems.length === 0 ? problems : problems.filter(({ code }) => code !== 'duplicate-key');
}

/** An item ends where its text does, or behind its last character where another follows. */
function isIn({ piece, key, node }: Item, offset: number): boolean {
  return piece.role === 'item' || ((key ?? node).start <= offset && offset <= node.end + 1);
}
