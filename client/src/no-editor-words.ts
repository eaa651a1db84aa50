// Where the server has nothing to offer, the editor must not offer words of the text instead: Tab, which leads from one
// blank of a ready-made item to the next, would replace a name just typed by such a word. The editor's setting for this
// is by language and would change the user's other YAML, but it offers words only where nobody else answers.
import * as vscode from 'vscode';
import type { CompletionMiddleware } from 'vscode-languageclient';

export const noEditorWords: CompletionMiddleware = {
  async provideCompletionItem(document, position, context, token, next) {
    const found = await next(document, position, context, token);
    const items = Array.isArray(found) ? found : (found?.items ?? []);
    const line = document.getText(new vscode.Range(position.with({ character: 0 }), position));
    const typed = line.trimStart();
    if (items.length > 0 || typed === '') return found;
    return new vscode.CompletionList([neverShown(position, typed)], true);
  },
};

/** An answer that does not match the text before the cursor, so that no list opens. */
function neverShown(position: vscode.Position, typed: string): vscode.CompletionItem {
  const item = new vscode.CompletionItem('—', vscode.CompletionItemKind.Text);
  const range = new vscode.Range(position.translate(0, -typed.length), position);
  return Object.assign(item, { filterText: '—', insertText: typed, range });
}
