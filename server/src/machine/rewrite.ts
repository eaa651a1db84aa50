/** Writes changed texts of sites back to their files. */

import { readFileSync } from 'node:fs';
import { CannotDo } from './cannot-do.ts';
import { pathOf, readNow } from './disk.ts';
import { writeFiles } from './write-files.ts';

export interface Rewritten {
  readonly uri: string;
  readonly before: string;
  readonly after: string;
}

/** @throws CannotDo where a file cannot be written, or has changed since it was read; then none is changed */
export function rewrite(texts: readonly Rewritten[]): void {
  for (const { uri, before } of texts) {
    const now = readNow(pathOf(uri));
    if (!('text' in now) || now.text !== before)
      throw new CannotDo(`${pathOf(uri)} was changed while it was looked at. Nothing was written: ask again.`);
  }
  writeFiles(texts.map(({ uri, after }) => ({ path: pathOf(uri), text: markOf(pathOf(uri)) + after })));
}

/** The byte order mark at the start of a file, which is not part of its text. */
function markOf(path: string): string {
  return readFileSync(path, 'utf8').startsWith('\ufeff') ? '\ufeff' : '';
}
