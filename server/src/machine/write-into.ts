/** Writes files into a folder that a person named, and nowhere else. */

import { lstatSync, realpathSync } from 'node:fs';
import { dirname, join, relative, sep } from 'node:path';
import { CannotDo } from './cannot-do.ts';
import { codeOfSystem, reasonOf } from './failures.ts';
import { makeFolder } from './make-folder.ts';
import { type NewText, writeFiles } from './write-files.ts';

/**
 * Makes the folder and those in it where they are missing.
 *
 * @param files their paths are from the folder
 * @returns where they are
 * @throws CannotDo where one of them cannot be written, or a link would lead it out of the folder; then no file is
 * changed
 */
export function writeInto(folder: string, files: readonly NewText[]): readonly string[] {
  const texts = files.map((file) => ({ ...file, path: join(folder, file.path) }));
  make(folder);
  for (const { path } of texts) staysWithin(folder, path);
  for (const path of new Set(texts.map((text) => dirname(text.path)))) make(path);
  writeFiles(texts);
  return texts.map(({ path }) => path);
}

function make(folder: string): void {
  try {
    makeFolder(folder);
  } catch (error) {
    throw new CannotDo(`The folder ${folder} cannot be made: ${reasonOf(codeOfSystem(error))}.`);
  }
}

/** Follows links in the part of the path that exists, to see where the file would be written. */
function staysWithin(folder: string, path: string): void {
  let there = path;
  while (lstatSync(there, { throwIfNoEntry: false }) === undefined) there = dirname(there);
  const way = relative(realpathSync(folder), whereTo(there));
  if (way === '..' || way.startsWith(`..${sep}`))
    throw new CannotDo(`${there} is a link that leads out of ${folder}: nothing was written. Remove the link.`);
}

function whereTo(path: string): string {
  try {
    return realpathSync(path);
  } catch (error) {
    throw new CannotDo(`${path} is a link that leads nowhere (${reasonOf(codeOfSystem(error))}): nothing was written.`);
  }
}
