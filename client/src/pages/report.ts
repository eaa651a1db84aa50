// The report of a site beside its text.
import * as vscode from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { page } from '../../../server/src/lsp/page-request.ts';
import { chooseFolder } from './choose-folder.ts';
import type { Pages } from './pages.ts';

export const reportCommand = 'plumbline.showReport';
export const reportView = 'plumbline.report';

export function registerReport(client: BaseLanguageClient, pages: Pages): vscode.Disposable {
  return vscode.commands.registerCommand(reportCommand, async (chosen: unknown) => {
    const folder = typeof chosen === 'string' ? chosen : await chooseFolder(client, chosen, 'Show report');
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
