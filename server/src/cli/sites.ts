/** The sites that a command reads: folders on disk, or one file's text from standard input. */

import { readdirSync, statSync } from 'node:fs';
import { dirname, join, relative, resolve, sep } from 'node:path';
import { LARGEST_BYTES, type Read, decoded, pathOf, readNow, uriOf } from '../machine/disk.ts';
import { codeOf, reasonOf } from '../machine/failures.ts';
import { SUFFIX, SiteFolder, TOO_LARGE } from '../site/folder.ts';
import { CannotDo } from '../machine/cannot-do.ts';

export interface SiteOnDisk {
  readonly path: string;
  readonly folder: SiteFolder;
}

/** Reads the site of each folder; of the working folder where none is named. */
export function readSites(paths: readonly string[]): SiteOnDisk[] {
  return siteFolders(paths).map((path) => readSite(path));
}

/** The folders of the paths, each once: a file stands for the folder that it is in. */
export function siteFolders(paths: readonly string[]): string[] {
  const folders = (paths.length === 0 ? ['.'] : paths).map((path) =>
    path.endsWith(SUFFIX) && !isFolder(path) ? dirname(path) : path,
  );
  return [...new Map(folders.map((folder) => [resolve(folder), folder])).values()];
}

export function readSite(path: string): SiteOnDisk {
  const site = readFolder(path);
  if (site.folder.size === 0)
    throw new CannotDo(
      `${path} holds no *${SUFFIX} file, so there is no site in it. \`plumbline new FOLDER\` writes one.`,
    );
  return site;
}

/**
 * The site of one folder, with standard input for the text of one file, which need not be on disk.
 *
 * @param file the file's path
 * @param folders the folder of the other files; empty for the file's own folder
 */
export async function siteWithInput(file: string, folders: readonly string[]): Promise<SiteOnDisk> {
  if (!file.endsWith(SUFFIX)) throw new CannotDo(`${file} is not named *${SUFFIX}, so it is no file of a site.`);
  if (folders.length > 1) throw new CannotDo('--stdin-filename is a file of one site: name one FOLDER at most.');
  const site = readFolder(folders[0] ?? dirname(file));
  const read = await standardInput();
  if ('unreadable' in read) throw new CannotDo(`Standard input cannot be read: ${read.unreadable}.`);
  site.folder.set(uriOf(resolve(file)), read.text);
  return site;
}

/** Reads standard input, no more than a file may have. */
async function standardInput(): Promise<Read> {
  const chunks: Uint8Array[] = [];
  let size = 0;
  for await (const chunk of process.stdin as AsyncIterable<Uint8Array>) {
    chunks.push(chunk);
    if ((size += chunk.length) > LARGEST_BYTES) return { unreadable: TOO_LARGE };
  }
  return decoded(Buffer.concat(chunks));
}

function readFolder(path: string): SiteOnDisk {
  const folder = new SiteFolder();
  for (const name of siteFilesIn(path)) {
    const file = join(path, name);
    const read = readNow(file);
    if ('text' in read) folder.set(uriOf(resolve(file)), read.text);
    else folder.setUnreadable(uriOf(resolve(file)), read.unreadable);
  }
  return { path, folder };
}

function isFolder(path: string): boolean {
  return statSync(path, { throwIfNoEntry: false })?.isDirectory() === true;
}

function siteFilesIn(path: string): string[] {
  try {
    if (statSync(path).isFile())
      throw new CannotDo(`${path} is a file. A site is a folder: name the folder that it is in.`);
    return readdirSync(path)
      .filter((name) => name.endsWith(SUFFIX))
      .sort();
  } catch (error) {
    const code = codeOf(error);
    if (code !== undefined) throw new CannotDo(`${path} cannot be read: ${reasonOf(code)}.`);
    throw error;
  }
}

/** The path of a file for people and programs: from the working folder, with forward slashes. */
export function shownPath(uri: string): string {
  return relative(process.cwd(), pathOf(uri)).split(sep).join('/');
}
