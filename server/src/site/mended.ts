/** Whether a change leaves fewer faults in the text that it changes. */

import { perObject } from '../memo.ts';
import type { Piece } from '../text/cut.ts';
import type { Edit, Fix } from './edit.ts';
import { contentOf } from './item.ts';

/**
 * Characters without remarks; a longer piece takes too long to read again for each fix, so it gets none that must be
 * seen to mend it.
 */
const LONGEST = 10_000;

/** By the shape of what is changed alone: whether names that it mentions are there is another question. */
export function isMended({ edits }: Fix): boolean {
  const pieces = [...new Set(edits.map(({ at }) => at.piece))];
  return pieces.every((piece) => isShort(piece) && faultsOf(edited(piece, edits)) < faultsOf(piece));
}

const isShort = perObject(({ text }: Piece) => text.replace(/^ *#.*\n/gm, '').length <= LONGEST);

const faultsOf = perObject((piece: Piece): number => {
  const { items, problems } = contentOf(piece);
  return problems.length + items.reduce((sum, item) => sum + item.problems.length, 0);
});

function edited(piece: Piece, edits: readonly Edit[]): Piece {
  let { text } = piece;
  const own = edits.filter(({ at }) => at.piece === piece).sort((a, b) => b.at.start - a.at.start);
  for (const { at, text: by } of own) text = text.slice(0, at.start) + by + text.slice(at.end);
  return { ...piece, text };
}
