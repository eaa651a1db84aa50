// The report of a site beside its text.
import * as vscode from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { page } from '../../../server/src/lsp/page-request.ts';
import { chooseFolder } from './choose-folder.ts';
import type { PageSource, Pages } from './pages.ts';

export const reportCommand = 'plumbline.showReport';
export const reportView = 'plumbline.report';

export function registerReport(client: BaseLanguageClient, pages: Pages): vscode.Disposable {
  const reportOf = (folder: string): PageSource => ({
    key: `${reportView} ${folder}`,
    viewType: reportView,
    title: 'Report',
    folder,
    look: 'editor',
    content: () => client.sendRequest(page, { folder, page: 'report' }),
  });
  return vscode.Disposable.from(
    pages.bringBack(reportView, (key) => reportOf(key.slice(reportView.length + 1))),
    vscode.commands.registerCommand(reportCommand, async (chosen: unknown) => {
      const folder = typeof chosen === 'string' ? chosen : await chooseFolder(client, chosen, 'Show report');
      if (folder !== undefined) pages.show(reportOf(folder));
    }),
  );
}
