/** The files of a recording on this machine. */

import { type Dirent, readdirSync } from 'node:fs';
import { join } from 'node:path';
import type { CandidateFile } from '../footage/candidates.ts';
import type { FoundFiles } from '../footage/tools.ts';
import { codeOf, reasonOf } from './failures.ts';
import type { FileNames } from '../recordings/file-names.ts';
import { CannotDo } from './cannot-do.ts';

/**
 * All files under the root that have a name of the recording. Links to folders are not followed.
 *
 * @throws CannotDo where the folder cannot be read
 */
export function findFiles(root: string, names: FileNames): FoundFiles {
  const found: CandidateFile[] = [];
  const skipped: string[] = [];
  const walk = (folder: string, depth: number): void => {
    for (const entry of entriesOf(join(root, folder), folder === names.folder)) {
      const path = folder + entry.name;
      if (entry.isDirectory()) {
        if (depth > 0) walk(`${path}/`, depth - 1);
        continue;
      }
      const read = depth === 0 ? names.read(path) : undefined;
      if (read === undefined) continue;
      if (read.instants.length === 0) skipped.push(path);
      else found.push({ path, instants: read.instants });
    }
  };
  walk(names.folder, names.depth - (names.folder.split('/').length - 1));
  return { found, skipped };
}

function entriesOf(folder: string, isFirst: boolean): Dirent[] {
  try {
    return readdirSync(folder, { withFileTypes: true });
  } catch (error) {
    const code = codeOf(error);
    if (code === undefined) throw error;
    // A folder that retention has just removed holds nothing.
    if (code === 'ENOENT' && !isFirst) return [];
    throw new CannotDo(`${folder} cannot be read: ${reasonOf(code)}.`);
  }
}
