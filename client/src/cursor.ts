// Tells the server where the cursor is, unless that is the end of the last edit, which the server assumes.
import * as vscode from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { State } from 'vscode-languageclient';
import { cursorMoved } from '../../server/src/lsp/cursor.ts';
import { siteDocuments } from './site-documents.ts';

export function followCursor(client: BaseLanguageClient): vscode.Disposable {
  let edit: { readonly document: vscode.TextDocument; readonly end: number } | undefined;
  return vscode.Disposable.from(
    vscode.workspace.onDidChangeTextDocument(({ document, contentChanges }) => {
      const last = contentChanges[contentChanges.length - 1];
      if (last !== undefined) edit = { document, end: last.rangeOffset + last.text.length };
    }),
    vscode.window.onDidChangeTextEditorSelection(({ textEditor: { document }, selections: [selection] }) => {
      if (selection === undefined || client.state !== State.Running) return;
      if (vscode.languages.match(siteDocuments, document) === 0) return;
      const position = selection.active;
      if (edit?.document === document && edit.end === document.offsetAt(position)) return;
      const { line, character } = position;
      void client.sendNotification(cursorMoved, { uri: document.uri.toString(), position: { line, character } });
    }),
  );
}
