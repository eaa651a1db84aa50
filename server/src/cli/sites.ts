/** The sites that a command is to look at: folders on disk, or one file's text from standard input. */

import { readdirSync, statSync } from 'node:fs';
import { join, relative, resolve } from 'node:path';
import { SUFFIX, codeOf, pathOf, readNow, reasonOf, uriOf } from '../lsp/disk.ts';
import { SiteFolder } from '../site/folder.ts';
import { CannotDo } from './cannot-do.ts';

export interface SiteOnDisk {
  readonly path: string;
  readonly folder: SiteFolder;
}

/** Reads the site of each folder; of the working folder where none is named. */
export function readSites(paths: readonly string[]): SiteOnDisk[] {
  return (paths.length === 0 ? ['.'] : paths).map((path) => readSite(path));
}

export function readSite(path: string): SiteOnDisk {
  const names = siteFilesIn(path);
  if (names.length === 0) throw new CannotDo(`${path} holds no *${SUFFIX} file, so there is no site in it.`);
  const folder = new SiteFolder();
  for (const name of names) {
    const file = join(path, name);
    const read = readNow(file);
    if ('text' in read) folder.set(uriOf(resolve(file)), read.text);
    else folder.setUnreadable(uriOf(resolve(file)), read.unreadable);
  }
  return { path, folder };
}

function siteFilesIn(path: string): string[] {
  try {
    if (statSync(path).isFile()) throw new CannotDo(`${path} is a file. A site is a folder: name the folder that it is in.`);
    return readdirSync(path).filter((name) => name.endsWith(SUFFIX)).sort();
  } catch (error) {
    const code = codeOf(error);
    if (code !== undefined) throw new CannotDo(`${path} cannot be read: ${reasonOf(code)}.`);
    throw error;
  }
}

/** The path of a file for people and machines: from the working folder, with forward slashes. */
export function shownPath(uri: string): string {
  const path = relative(process.cwd(), pathOf(uri));
  return path.replaceAll('\\', '/');
}
