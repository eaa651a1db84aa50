/** Files that the server cannot reach by itself: the client lists and reads them for it. */

import type { Connection } from 'vscode-languageserver';
import { ErrorCodes, RequestType, ResponseError } from 'vscode-languageserver-protocol';
import { URI } from 'vscode-uri';
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

export function clientFiles(connection: Connection): FileSource {
  const listed = async (what: typeof listFiles, folder: string): Promise<readonly string[]> => {
    try {
      const found = await connection.sendRequest(what, { folder });
      return found.map((uri) => URI.parse(uri).toString());
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
        return (await connection.sendRequest(readFile, { uri })) ?? undefined;
      } catch (error) {
        if (!(error instanceof ResponseError)) throw error;
        return { unreadable: `the editor says: ${error.message}` };
      }
    },
  };
}
