// Prints a page: the editor cannot, so a browser does.
import * as vscode from 'vscode';
import type { WriteTexts } from '../write-whole.ts';
import type { Page } from './pages.ts';

export const printCommand = 'plumbline.print';

/** What of a page is printed. */
type Printed = Pick<Page, 'html' | 'download'> & { readonly panel: Pick<Page['panel'], 'title'> };

/** @param storage a folder of the extension's own for what a browser opens */
export async function print(page: Printed, storage: vscode.Uri, write: WriteTexts): Promise<void> {
  const name = `${page.panel.title.replace(/[^\p{L}\p{N}]+/gu, '-').replace(/^-|-$/g, '')}.html`;
  // In a browser the editor's files may be on another machine, or nowhere.
  if (vscode.env.uiKind === vscode.UIKind.Web) {
    page.download(name);
    void vscode.window.showInformationMessage(`Open ${name} from your downloads, and print it there.`);
    return;
  }
  const file = vscode.Uri.joinPath(storage, 'print', name);
  await write([{ uri: file, text: page.html }]);
  await vscode.env.openExternal(file);
}
