// Chooses the site of a page.
import * as vscode from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { sitePattern } from '../site-documents.ts';
import { folderOf, siteFile } from '../site-of.ts';

/** The folder of the active file, or else one of the workspace. */
export async function chooseFolder(
  client: BaseLanguageClient,
  chosen: unknown,
  title: string,
): Promise<string | undefined> {
  const file = siteFile(chosen);
  if (file !== undefined) return folderOf(client, file);
  const files = await vscode.workspace.findFiles(sitePattern);
  const folders = [...new Set(files.map((found) => folderOf(client, found)))].sort();
  if (folders.length < 2) return folders[0];
  const items = folders.map((folder) => ({
    label: vscode.workspace.asRelativePath(client.protocol2CodeConverter.asUri(folder)),
    folder,
  }));
  return (await vscode.window.showQuickPick(items, { title, placeHolder: 'Which site?' }))?.folder;
}
