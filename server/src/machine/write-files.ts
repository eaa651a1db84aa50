/** Writes files whole or not at all: each is written beside its target, and all are renamed once all are written. */

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
  /** The mode of a new file, less the umask. */
  readonly mode?: number;
}

/**
 * An existing file keeps its mode, and is replaced only where we may write to it. The target of a link is replaced,
 * not the link.
 *
 * @throws CannotDo where one of them cannot be written; then none is changed
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
    // Files that were renamed are no longer under these names.
    for (const { file } of written) rmSync(file, { force: true });
  }
}

/** The real path of the file: one that we may not write to is not replaced either. @throws where it is no file */
function replaced(path: string): string {
  const there = statSync(path, { throwIfNoEntry: false });
  if (there === undefined) return path;
  if (there.isDirectory()) throw new CannotDo(`${path} cannot be written: ${reasonOf('EISDIR')}.`);
  if (!there.isFile()) throw new CannotDo(`${path} cannot be written: it is no ordinary file.`);
  accessSync(path, constants.W_OK);
  return realpathSync(path);
}

/** @throws the system's errors; the caller removes a part that was written */
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
