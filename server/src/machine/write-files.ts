/** Writes files whole or not at all: each is written beside its place, and all get their names when all are written. */

import {
  accessSync,
  closeSync,
  constants,
  fsyncSync,
  openSync,
  realpathSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { dirname } from 'node:path';
import { CannotDo } from './cannot-do.ts';
import { codeOfSystem, reasonOf } from './failures.ts';
import { clearLeftovers, unfinishedIn } from './leftovers.ts';
import { type Finished, putInPlace } from './put-in-place.ts';

export interface NewText {
  readonly path: string;
  readonly text: string;
  /** Of a file that is not there yet, less what the umask takes away. */
  readonly mode?: number;
}

/**
 * A file that is there keeps its mode, and is replaced only where it could be written to. Of a link the file is
 * replaced that it leads to.
 *
 * @throws CannotDo where one of them cannot be written; all are as they were then
 */
export function writeFiles(texts: readonly NewText[]): void {
  const written: Finished[] = [];
  try {
    for (const { path, text, mode } of texts) {
      const target = inWords(path, () => replaced(path));
      const folder = dirname(target);
      clearLeftovers(folder);
      const file = unfinishedIn(folder);
      written.push({ file, target });
      inWords(`A file in ${folder}, beside ${path},`, () => writeNew(file, text, mode));
    }
    inWords(texts.map(({ path }) => path).join(', '), () => putInPlace(written));
  } finally {
    // Those that have got their names are not there under these.
    for (const { file } of written) rmSync(file, { force: true });
  }
}

/** The file that a path means: whoever may not write to it may not replace it either. @throws where it is no file */
function replaced(path: string): string {
  const there = statSync(path, { throwIfNoEntry: false });
  if (there === undefined) return path;
  if (there.isDirectory()) throw new CannotDo(`${path} cannot be written: ${reasonOf('EISDIR')}.`);
  if (!there.isFile()) throw new CannotDo(`${path} cannot be written: it is no ordinary file.`);
  accessSync(path, constants.W_OK);
  return realpathSync(path);
}

/** @throws what the system refuses; what there is of it then is left to who called */
function writeNew(path: string, text: string, mode = 0o666): void {
  const file = openSync(path, 'wx', mode);
  try {
    writeFileSync(file, text);
    fsyncSync(file);
  } finally {
    closeSync(file);
  }
}

function inWords<T>(what: string, write: () => T): T {
  try {
    return write();
  } catch (error) {
    if (error instanceof CannotDo) throw error;
    throw new CannotDo(`${what} cannot be written: ${reasonOf(codeOfSystem(error))}. Nothing was changed.`);
  }
}
