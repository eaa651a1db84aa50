// Lists and reads site files for a server that cannot reach them: one in a worker, or of a virtual workspace.
import * as vscode from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { listFiles, listFolders, readFile } from '../../server/src/lsp/client-files.ts';

const suffix = '.site.yaml';
const utf8 = new TextDecoder('utf-8', { fatal: true });

/** Answers the server's requests until disposed. */
export function serveFiles(client: BaseLanguageClient): vscode.Disposable {
  return vscode.Disposable.from(
    client.onRequest(listFiles, async ({ folder }) => {
      const { uri, entries } = await entriesOf(folder);
      return entries
        .filter(([name, type]) => name.endsWith(suffix) && (type & vscode.FileType.File) !== 0)
        .map(([name]) => vscode.Uri.joinPath(uri, name).toString());
    }),
    client.onRequest(listFolders, async ({ folder }) => {
      const { uri, entries } = await entriesOf(folder);
      return entries
        .filter(([, type]) => type === vscode.FileType.Directory)
        .map(([name]) => vscode.Uri.joinPath(uri, name).toString());
    }),
    client.onRequest(readFile, async ({ uri }) => {
      if (!uri.endsWith(suffix)) return { unreadable: `it is not named *${suffix}` };
      try {
        return { text: utf8.decode(await vscode.workspace.fs.readFile(vscode.Uri.parse(uri))) };
      } catch (error) {
        return isGone(error) ? null : { unreadable: reasonOf(error) };
      }
    }),
  );
}

async function entriesOf(folder: string): Promise<{ uri: vscode.Uri; entries: [string, vscode.FileType][] }> {
  const parsed = vscode.Uri.parse(folder);
  const uri = parsed.path === '' ? parsed.with({ path: '/' }) : parsed; // the root of a provider
  return { uri, entries: await vscode.workspace.fs.readDirectory(uri).then((found) => found, noneWhereGone) };
}

/** Empty for a folder that is gone, or that its provider cannot list: the open files are then the site. */
function noneWhereGone(error: unknown): [string, vscode.FileType][] {
  if (error instanceof vscode.FileSystemError) return [];
  throw error;
}

function isGone(error: unknown): boolean {
  return error instanceof vscode.FileSystemError && error.code === 'FileNotFound';
}

function reasonOf(error: unknown): string {
  if (error instanceof TypeError) return 'it is not UTF-8 text';
  if (!(error instanceof vscode.FileSystemError)) throw error;
  switch (error.code) {
    case 'NoPermissions':
      return 'permission is denied';
    case 'FileIsADirectory':
      return 'it is a folder';
    default:
      return `the editor says ${error.code}`;
  }
}
