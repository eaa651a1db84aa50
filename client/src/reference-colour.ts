// The colour of references in the one default theme that colours no semantic tokens, the light one of high contrast.
// (Turning these on for the language would change the user's other YAML too.)
import * as vscode from 'vscode';
import { siteDocuments } from './site-documents.ts';

/** Five numbers a token: lines and characters from the one before, length, kind, modifiers. */
const NUMBERS = 5;

/** @param siteChecked fires with the folder of a site that has been checked */
export function colourReferences(siteChecked: vscode.Event<string>): vscode.Disposable {
  const kind = vscode.window.createTextEditorDecorationType({ color: new vscode.ThemeColor('plumbline.reference') });
  const colour = async (editor: vscode.TextEditor): Promise<void> => {
    const { document } = editor;
    if (vscode.languages.match(siteDocuments, document) === 0) return;
    const { version } = document;
    const ranges = isDue(document) ? await referencesIn(document) : [];
    if (document.version === version) editor.setDecorations(kind, ranges);
  };
  const colourAll = (): void => {
    for (const editor of vscode.window.visibleTextEditors) void colour(editor);
  };
  colourAll();
  return vscode.Disposable.from(
    kind,
    siteChecked(colourAll),
    vscode.window.onDidChangeVisibleTextEditors(colourAll),
    vscode.window.onDidChangeActiveColorTheme(colourAll),
  );
}

function isDue(document: vscode.TextDocument): boolean {
  const isLeftToTheme =
    vscode.workspace.getConfiguration('editor', document).get('semanticHighlighting.enabled') === 'configuredByTheme';
  return isLeftToTheme && vscode.window.activeColorTheme.kind === vscode.ColorThemeKind.HighContrastLight;
}

async function referencesIn({ uri }: vscode.TextDocument): Promise<vscode.Range[]> {
  const tokens = await vscode.commands.executeCommand<vscode.SemanticTokens | undefined>(
    'vscode.provideDocumentSemanticTokens',
    uri,
  );
  const ranges: vscode.Range[] = [];
  let [line, character] = [0, 0];
  for (let index = 0; index < (tokens?.data.length ?? 0); index += NUMBERS) {
    const [lines = 0, characters = 0, length = 0] = tokens?.data.subarray(index, index + NUMBERS) ?? [];
    character = lines === 0 ? character + characters : characters;
    line += lines;
    ranges.push(new vscode.Range(line, character, line, character + length));
  }
  return ranges;
}
