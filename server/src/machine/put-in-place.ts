/** Gives finished files their names: all of them, or none. */

import {
  type Stats,
  chmodSync,
  chownSync,
  closeSync,
  fsyncSync,
  linkSync,
  lstatSync,
  openSync,
  renameSync,
  rmSync,
} from 'node:fs';
import { dirname } from 'node:path';
import { codeOfSystem } from './failures.ts';
import { unfinishedIn } from './leftovers.ts';

export interface Finished {
  /** Its bytes are on the disk. It is in the folder of its target, or at least on the same disk. */
  readonly file: string;
  readonly target: string;
}

/** A target that was replaced, and a second name of the old file; `undefined` where there was none. */
interface Placed {
  readonly target: string;
  readonly before: string | undefined;
}

/**
 * An existing file is replaced atomically: a reader sees all of the old one or all of the new. Its mode stays, and its
 * owner where we may set it; a link is replaced itself, not its target.
 *
 * @throws the system's errors; the targets are then as they were before
 */
export function putInPlace(files: readonly Finished[]): void {
  const placed: Placed[] = [];
  try {
    for (const { file, target } of files) {
      const there = lstatSync(target, { throwIfNoEntry: false });
      if (there?.isFile() === true) takeAfter(there, file);
      const before = there === undefined ? undefined : secondName(target);
      placed.push({ target, before });
      renameSync(file, target);
    }
  } catch (error) {
    for (const each of placed.reverse()) putBack(each);
    throw error;
  }
  for (const { before } of placed) if (before !== undefined) rmSync(before);
  for (const folder of new Set(files.map(({ target }) => dirname(target)))) syncFolder(folder);
}

function takeAfter({ uid, gid, mode }: Stats, file: string): void {
  try {
    chownSync(file, uid, gid);
  } catch (error) {
    codeOfSystem(error); // Only root may give files away: the new one is ours.
  }
  // Last, since changing the owner clears bits of the mode.
  chmodSync(file, mode & 0o7777);
}

/** By a hard link, so that the target always exists; on a disk without links, such as FAT, it is moved. */
function secondName(target: string): string {
  const name = unfinishedIn(dirname(target));
  try {
    linkSync(target, name);
  } catch (error) {
    codeOfSystem(error);
    renameSync(target, name);
  }
  return name;
}

function putBack({ target, before }: Placed): void {
  if (before === undefined) return rmSync(target, { force: true });
  renameSync(before, target);
  // Where both names are of the same file, rename removes neither (POSIX, rename).
  rmSync(before, { force: true });
}

/** A new name survives a power failure only once its folder is on the disk. */
function syncFolder(path: string): void {
  try {
    const folder = openSync(path, 'r');
    try {
      fsyncSync(folder);
    } finally {
      closeSync(folder);
    }
  } catch (error) {
    codeOfSystem(error); // Not every system opens a folder.
  }
}
