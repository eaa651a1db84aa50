/** The difference between a file and what it is to be, as edits of whole lines. */

import { diffLines } from 'diff';
import type { Edit } from '../../site/edit.ts';
import { type SiteText, placeInFile } from '../../site/folder.ts';

/** Where more lines differ, all are replaced: the time to find the fewest edits grows with their square. */
const MAX_CHANGED = 4000;

/** The edits that turn the file into `text`. */
export function lineEdits(file: SiteText, text: string): Edit[] {
  const edits: Edit[] = [];
  let at = 0;
  let open: { start: number; end: number; text: string } | undefined;
  const close = (): void => {
    if (open !== undefined) edits.push({ at: placeInFile(file, open), text: open.text });
    open = undefined;
  };
  const changes = diffLines(file.text, text, { maxEditLength: MAX_CHANGED });
  if (changes === undefined) return [{ at: placeInFile(file, { start: 0, end: file.text.length }), text }];
  for (const { value, added, removed } of changes) {
    if (!added && !removed) {
      close();
      at += value.length;
      continue;
    }
    open ??= { start: at, end: at, text: '' };
    if (added) open.text += value;
    else open.end = at += value.length;
  }
  close();
  return edits;
}
