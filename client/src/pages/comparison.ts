// The differences from the last commit, beside the text.
import * as vscode from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { page } from '../../../server/src/lsp/page-request.ts';
import { chooseFolder } from './choose-folder.ts';
import type { PageSource, Pages } from './pages.ts';

export const compareCommand = 'plumbline.compare';
export const comparisonView = 'plumbline.comparison';

export function registerComparison(client: BaseLanguageClient, pages: Pages): vscode.Disposable {
  const comparisonOf = (folder: string): PageSource => ({
    key: `${comparisonView} ${folder}`,
    viewType: comparisonView,
    title: 'Since the last commit',
    folder,
    look: 'editor',
    content: () => client.sendRequest(page, { folder, page: 'comparison' }),
  });
  return vscode.Disposable.from(
    pages.bringBack(comparisonView, (key) => comparisonOf(key.slice(comparisonView.length + 1))),
    vscode.commands.registerCommand(compareCommand, async (chosen: unknown) => {
      const folder = await chooseFolder(client, chosen, 'Compare with the last commit');
      if (folder !== undefined) pages.show(comparisonOf(folder));
    }),
  );
}
