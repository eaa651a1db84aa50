/** The key of a section under the pointer. */

import { contentOf, type Place } from '../../site/item.ts';
import { pieceAt } from '../../site/locate.ts';
import { type SiteText, placeInFile, pieceStart } from '../../site/folder.ts';
import { type SectionName, sectionOf } from '../../site/shape.ts';
import { keyText } from '../../text/syntax.ts';

export function sectionAt(
  file: SiteText,
  offset: number,
): { readonly section: SectionName; readonly at: Place } | undefined {
  for (const { section, start, end } of file.cut.headers) {
    if (offset < start || offset > end) continue;
    const known = sectionOf(section);
    return known === undefined ? undefined : { section: known, at: placeInFile(file, { start, end }) };
  }
  const piece = pieceAt(file, offset);
  const root = piece === undefined ? undefined : contentOf(piece).tree.root;
  if (piece === undefined || piece.role === 'item' || root?.kind !== 'mapping') return undefined;
  const at = offset - pieceStart(file, piece);
  for (const { key } of root.entries) {
    const section = sectionOf(keyText(key));
    if (section !== undefined && key.start <= at && at <= key.end) {
      return { section, at: { piece, start: key.start, end: key.end } };
    }
  }
  return undefined;
}
