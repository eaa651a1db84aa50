/** Files that the server cannot reach by itself: the client lists and reads them for it. */

import type { Connection } from 'vscode-languageserver';
import { ErrorCodes, RequestType, ResponseError } from 'vscode-languageserver-protocol';
import { oneForm } from './addresses.ts';
import type { FileSource } from './sites.ts';

type Read = Exclude<Awaited<ReturnType<FileSource['read']>>, undefined>;

/** Addresses of the `*.site.yaml` files in a folder, none of folders below it. */
export const listFiles = new RequestType<{ readonly folder: string }, readonly string[], void>('plumbline/listFiles');

/** Addresses of the folders in a folder, without those that are links. */
export const listFolders = new RequestType<{ readonly folder: string }, readonly string[], void>(
  'plumbline/listFolders',
);

/** The text of a site file, or why it cannot be read; null where there is no such file. */
export const readFile = new RequestType<{ readonly uri: string }, Read | null, void>('plumbline/readFile');

/** A client may answer anything. */
function isRead(answer: unknown): boolean {
  if (!(answer instanceof Object)) return false;
  return ['text', 'unreadable'].some(
    (key) => typeof Object.entries(answer).find(([own]) => own === key)?.[1] === 'string',
  );
}

export function clientFiles(connection: Connection): FileSource {
  const listed = async (what: typeof listFiles, folder: string): Promise<readonly string[]> => {
    try {
      const found: unknown = await connection.sendRequest(what, { folder });
      const all: readonly unknown[] = Array.isArray(found) ? found : [];
      return all.flatMap((uri) => (typeof uri === 'string' ? (oneForm(uri) ?? []) : []));
    } catch (error) {
      if (!(error instanceof ResponseError)) throw error;
      // Where the folder cannot be listed, or the client lacks the request, the open files are the site.
      if (error.code !== ErrorCodes.MethodNotFound)
        connection.console.error(`${folder} cannot be listed: ${error.message}`);
      return [];
    }
  };
  return {
    list: (folder) => listed(listFiles, folder),
    folders: (folder) => listed(listFolders, folder),
    async read(uri) {
      try {
        const read = await connection.sendRequest(readFile, { uri });
        if (read === null) return undefined;
        return isRead(read) ? read : { unreadable: 'the editor gives no text of it' };
      } catch (error) {
        if (!(error instanceof ResponseError)) throw error;
        return { unreadable: `the editor says: ${error.message}` };
      }
    },
  };
}
