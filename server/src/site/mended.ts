/** Whether a change leaves fewer faults in the text that it changes. */

import { perObject } from '../memo.ts';
import type { Piece } from '../text/cut.ts';
import type { Edit, Fix } from './edit.ts';
import { type PieceContent, contentOf, contentOnce } from './item.ts';

/**
 * Characters without comments. A longer piece takes too long to read again for each fix, so no fix of it counts as
 * proven.
 */
const LONGEST = 10_000;

/** Those of the fixes that mend something; of safe ones alone where only those are wanted, as each is read again. */
export function mending(fixes: readonly Fix[], wanted?: 'safe'): readonly Fix[] {
  return fixes.filter((fix) => (fix.safe || wanted === undefined) && isMended(fix));
}

/** Looks only at the shape of what is changed, not at whether the names in it are declared. */
function isMended({ edits }: Fix): boolean {
  const pieces = [...new Set(edits.map(({ at }) => at.piece))];
  return pieces.every((piece) => isShort(piece) && faultsIn(contentOnce(edited(piece, edits))) < faultsOf(piece));
}

const isShort = perObject(({ text }: Piece) => text.replace(/^ *#.*\n/gm, '').length <= LONGEST);

const faultsOf = perObject((piece: Piece): number => faultsIn(contentOf(piece)));

function faultsIn({ items, problems }: PieceContent): number {
  return problems.length + items.reduce((sum, item) => sum + item.problems.length, 0);
}

function edited(piece: Piece, edits: readonly Edit[]): Piece {
  let { text } = piece;
  const ofPiece = edits.filter(({ at }) => at.piece === piece).sort((a, b) => b.at.start - a.at.start);
  for (const { at, text: by } of ofPiece) text = text.slice(0, at.start) + by + text.slice(at.end);
  return { ...piece, text };
}
