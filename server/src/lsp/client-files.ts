/** Files that the server cannot reach by itself: the client lists and reads them for it. */

import type { Connection } from 'vscode-languageserver';
import { ErrorCodes, RequestType, ResponseError } from 'vscode-languageserver-protocol';
import { URI } from 'vscode-uri';
import type { FileSource } from './sites.ts';

type Read = Exclude<Awaited<ReturnType<FileSource['read']>>, undefined>;

/** Addresses of the `*.site.yaml` files in a folder, none of folders below it. */
export const listFiles = new RequestType<{ readonly folder: string }, readonly string[], void>('plumbline/listFiles');

/** The text of one of them, or why it cannot be read; null where there is no such file. */
export const readFile = new RequestType<{ readonly uri: string }, Read | null, void>('plumbline/readFile');

export function clientFiles(connection: Connection): FileSource {
  return {
    async list(folder) {
      try {
        const files = await connection.sendRequest(listFiles, { folder });
        return files.map((uri) => URI.parse(uri).toString());
      } catch (error) {
        if (!(error instanceof ResponseError)) throw error;
        // It cannot be listed, or the client knows of no such request: the open files are the site.
        if (error.code !== ErrorCodes.MethodNotFound)
          connection.console.error(`${folder} cannot be listed: ${error.message}`);
        return [];
      }
    },
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
