/** Site files on the disk of this machine. Reads `*.site.yaml` of the folder that is asked for, and nothing else. */

import {
  type Stats,
  closeSync,
  constants,
  fstatSync,
  lstatSync,
  openSync,
  readFileSync,
  realpathSync,
  statSync,
} from 'node:fs';
import { open, readdir, realpath, stat } from 'node:fs/promises';
import { dirname, sep } from 'node:path';
import { URI } from 'vscode-uri';
import { codeOf, reasonOf } from './failures.ts';
import { LARGEST_TEXT, SUFFIX, TOO_LARGE } from '../site/folder.ts';

const utf8 = new TextDecoder('utf-8', { fatal: true });

export type Read = { readonly text: string } | { readonly unreadable: string };

/** Read without blocking, for the language server. */
export const diskFiles = {
  async list(folder: string): Promise<readonly string[]> {
    try {
      const names = await readdir(URI.parse(folder).fsPath);
      return names.filter((name) => name.endsWith(SUFFIX)).map((name) => uriOf(`${URI.parse(folder).fsPath}/${name}`));
    } catch (error) {
      // A folder that cannot be listed, or is gone: the open files are the site.
      if (codeOf(error) !== undefined) return [];
      throw error;
    }
  },

  async folders(folder: string): Promise<readonly string[]> {
    const path = URI.parse(folder).fsPath;
    try {
      const entries = await readdir(path, { withFileTypes: true });
      return entries.filter((entry) => entry.isDirectory()).map(({ name }) => uriOf(`${path}/${name}`));
    } catch (error) {
      if (codeOf(error) !== undefined) return [];
      throw error;
    }
  },

  async read(uri: string): Promise<Read | undefined> {
    const path = pathOf(uri);
    try {
      const real = await realpath(path);
      const refused = leadsOut(real, await realpath(dirname(path))) ?? refusal(await stat(real));
      if (refused !== undefined) return refused;
      const file = await open(real, READ);
      try {
        return refusal(await file.stat()) ?? decoded(await file.readFile());
      } finally {
        await file.close();
      }
    } catch (error) {
      return isGone(error, path) ? undefined : unreadable(error);
    }
  },
};

/** Reads a file synchronously, for the command line. */
export function readNow(path: string): Read {
  try {
    const real = realpathSync(path);
    const refused = leadsOut(real, realpathSync(dirname(path))) ?? refusal(statSync(real));
    if (refused !== undefined) return refused;
    const file = openSync(real, READ);
    try {
      return refusal(fstatSync(file)) ?? decoded(readFileSync(file));
    } finally {
      closeSync(file);
    }
  } catch (error) {
    return unreadable(error);
  }
}

/**
 * A file that was looked at may be replaced before it is opened: by a pipe, which would wait for somebody to write to it,
 * or by a link. Windows has neither flag.
 */
const READ = constants.O_RDONLY | (constants.O_NONBLOCK ?? 0) | (constants.O_NOFOLLOW ?? 0);

function leadsOut(path: string, folder: string): Read | undefined {
  return path.startsWith(folder.endsWith(sep) ? folder : folder + sep)
    ? undefined
    : { unreadable: 'it is a link to a file outside of the folder' };
}

/** Why a file is not read: it might never end. */
function refusal(file: Stats): Read | undefined {
  if (file.isDirectory()) return { unreadable: reasonOf('EISDIR') };
  if (!file.isFile()) return { unreadable: 'it is no ordinary file' };
  return file.size > LARGEST_BYTES ? { unreadable: TOO_LARGE } : undefined;
}

/** A UTF-16 unit takes no more than three bytes in UTF-8. */
export const LARGEST_BYTES = 3 * LARGEST_TEXT;

/** Site files are UTF-8. */
export function decoded(bytes: Uint8Array): Read {
  try {
    return { text: utf8.decode(bytes) };
  } catch (error) {
    if (error instanceof TypeError) return { unreadable: 'it is not UTF-8 text' };
    throw error;
  }
}

/** Whether a file has vanished, or its folder is a file now; a link to a file that has is still there. */
function isGone(error: unknown, path: string): boolean {
  if (codeOf(error) === 'ENOTDIR') return true;
  return codeOf(error) === 'ENOENT' && lstatSync(path, { throwIfNoEntry: false }) === undefined;
}

function unreadable(error: unknown): Read {
  const code = codeOf(error);
  if (code === undefined) throw error;
  return { unreadable: reasonOf(code) };
}

/** Addresses of files as editors write them. */
export function uriOf(path: string): string {
  return URI.file(path).toString();
}

export function pathOf(uri: string): string {
  return URI.parse(uri).fsPath;
}
