// Enter behind a key that has nothing on its line begins a line inside it. The editor's own YAML leaves that to the
// Tab key. Language rules hold for all YAML, so they are there only while a site file has the keyboard.
import * as vscode from 'vscode';
import { siteDocuments } from './site-documents.ts';

const KEY = String.raw`(?:[^\s#"'{\[][^#"'{\[]*|"[^"]*"|'[^']*')`;

/** @param indent one more level of it */
function rules(indent: string): vscode.LanguageConfiguration {
  const below = (before: string, more: string): vscode.OnEnterRule => ({
    beforeText: new RegExp(String.raw`^\s*${before}${KEY}:\s*(?:#.*)?$`),
    afterText: /^\s*$/,
    // Not `Indent`: a file that began as an untitled text has the steps of that.
    action: { indentAction: vscode.IndentAction.None, appendText: more },
  });
  return { onEnterRules: [below(String.raw`-\s+`, `${indent}  `), below('', indent)] };
}

/** As its first line that is indented, else two spaces. */
function indentOf(document: vscode.TextDocument): string {
  return /^( {1,8})(?=\S)/m.exec(document.getText())?.[1] ?? '  ';
}

export function indentBelowKeys(): vscode.Disposable {
  let registered: vscode.Disposable | undefined;
  const follow = (editor: vscode.TextEditor | undefined): void => {
    registered?.dispose();
    const isSite = editor !== undefined && vscode.languages.match(siteDocuments, editor.document) > 0;
    registered = isSite
      ? vscode.languages.setLanguageConfiguration('yaml', rules(indentOf(editor.document)))
      : undefined;
  };
  follow(vscode.window.activeTextEditor);
  return vscode.Disposable.from(vscode.window.onDidChangeActiveTextEditor(follow), {
    dispose: () => registered?.dispose(),
  });
}
