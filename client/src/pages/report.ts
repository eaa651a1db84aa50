// The report of a site beside its text.
import * as vscode from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { page } from '../../../server/src/lsp/page-request.ts';
import { sitePattern } from '../site-documents.ts';
import { folderOf, siteFile } from '../site-of.ts';
import type { Pages } from './pages.ts';

export const reportCommand = 'plumbline.showReport';
export const reportView = 'plumbline.report';

export function registerReport(client: BaseLanguageClient, pages: Pages): vscode.Disposable {
  return vscode.commands.registerCommand(reportCommand, async (chosen: unknown) => {
    const folder = typeof chosen === 'string' ? chosen : await chooseFolder(client, chosen);
    if (folder === undefined) return;
    pages.show({
      key: `${reportView} ${folder}`,
      viewType: reportView,
      title: 'Report',
      folder,
      look: 'editor',
      content: () => client.sendRequest(page, { folder, page: 'report' }),
    });
  });
}

/** That of the file in front, or else one of the workspace. */
async function chooseFolder(client: BaseLanguageClient, chosen: unknown): Promise<string | undefined> {
  const file = siteFile(chosen);
  if (file !== undefined) return folderOf(client, file);
  const files = await vscode.workspace.findFiles(sitePattern);
  const folders = [...new Set(files.map((found) => folderOf(client, found)))].sort();
  if (folders.length < 2) return folders[0];
  const items = folders.map((folder) => ({
    label: vscode.workspace.asRelativePath(client.protocol2CodeConverter.asUri(folder)),
    folder,
  }));
  return (await vscode.window.showQuickPick(items, { title: 'Show report', placeHolder: 'Which site?' }))?.folder;
}
