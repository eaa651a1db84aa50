/** An item that was pasted beside its twin, to be made another: what both have in common is no mistake yet. */

import type { SiteText } from '../site/folder.ts';
import { pieceAt } from '../site/locate.ts';
import { type Piece, changeBetween } from '../text/cut.ts';
import type { Diagnostic } from './rule.ts';

export interface Copied {
  /** The copies and their original; the text does not show which is which. */
  readonly twins: readonly Piece[];
  /** The one of them that is being made another. */
  readonly own: Piece | undefined;
}

/** So many characters at once are no typing. */
const PASTED = 8;

/** What is being made of a copy after an edit or a move of the cursor; `known` is what was before. */
export function copiedAfter(
  known: Copied | undefined,
  before: readonly SiteText[],
  now: readonly SiteText[],
  { uri, offset }: { readonly uri: string; readonly offset: number },
): Copied | undefined {
  const file = now.find((one) => one.uri === uri);
  if (file === undefined) return undefined;
  const twins = pastedTwins(before.find((one) => one.uri === uri)?.text ?? '', file);
  if (twins.length > 0) return { twins, own: undefined };
  if (known === undefined) return undefined;
  const here = pieceAt(file, offset);
  const { pieces } = file.cut;
  if (known.own === undefined && known.twins.every((twin) => pieces.includes(twin))) return known;
  if (here === known.own) return known;
  const isLeft = here === undefined || (known.own !== undefined && pieces.includes(known.own));
  return isLeft ? undefined : { twins: known.twins.filter((twin) => pieces.includes(twin)), own: here };
}

/** Whether it is found because one of them has still what another has. */
export function isOfCopy({ twins, own }: Copied, { at, related = [] }: Diagnostic): boolean {
  const isOne = (piece: Piece): boolean => piece === own || twins.includes(piece);
  return related.length > 0 && (isOne(at.piece) || related.some((one) => isOne(one.at.piece)));
}

function pastedTwins(before: string, { text, cut }: SiteText): Piece[] {
  if (text.length - before.length < PASTED) return [];
  const { start, end } = changeBetween(before, text);
  if (end - start < PASTED) return [];
  const inserted = text.slice(start, end);
  const byText = new Map<string, Piece[]>();
  for (const piece of cut.pieces) {
    if (piece.role !== 'item' || piece.text.trim().length > inserted.length) continue;
    const key = piece.text.trim();
    const same = byText.get(key);
    if (same === undefined) byText.set(key, [piece]);
    else same.push(piece);
  }
  return [...byText.values()].filter((same) => same.length > 1).flat();
}
