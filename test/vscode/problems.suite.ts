// Problems of sites in a real VS Code: without an open file, while an item is typed, and their fixes.
import assert from 'node:assert/strict';
import * as vscode from 'vscode';
import { eventually } from './eventually.ts';

const ruleOf = ({ code }: vscode.Diagnostic): string => String(typeof code === 'object' ? code.value : code);
const rulesOf = (uri: vscode.Uri): string[] => vscode.languages.getDiagnostics(uri).map(ruleOf);

const SITE = `devices:
  core: {kind: switch, ports: {1-8: {speed: 1 Gb/s}}}
  gate-cam: {kind: camera, speed: 1 Gb/s}
cables:
  - {from: core/1, to: gate-cam, type: cat6, length: 38 m}
`;

describe('problems', () => {
  let folder: vscode.Uri;
  let count = 0;

  // The editor keeps what it knows of a file for a while: each test has one of its own.
  beforeEach(() => {
    const [workspace] = vscode.workspace.workspaceFolders ?? [];
    assert.ok(workspace, 'a folder is open');
    folder = vscode.Uri.joinPath(workspace.uri, `problems-${++count}`);
  });
  afterEach(async () => {
    await vscode.commands.executeCommand('workbench.action.revertAndCloseActiveEditor');
    await vscode.workspace.fs.delete(folder, { recursive: true });
  });

  const put = async (text: string): Promise<vscode.Uri> => {
    const uri = vscode.Uri.joinPath(folder, 'home.site.yaml');
    await vscode.workspace.fs.writeFile(uri, new TextEncoder().encode(text));
    return uri;
  };
  const edit = async (text: string): Promise<vscode.TextEditor> =>
    vscode.window.showTextDocument(await vscode.workspace.openTextDocument(await put(text)));
  const actions = async ({ document }: vscode.TextEditor, rule: string): Promise<vscode.CodeAction[]> => {
    const found = await eventually(() => {
      const one = vscode.languages.getDiagnostics(document.uri).find((problem) => ruleOf(problem) === rule);
      assert.ok(one, `${rule} is shown`);
      return one;
    });
    return vscode.commands.executeCommand('vscode.executeCodeActionProvider', document.uri, found.range);
  };

  it('of a site without an open file are shown, and go with the file', async () => {
    const uri = await put(SITE.replace('kind: camera', 'kind: camra'));
    await eventually(() => assert.ok(rulesOf(uri).includes('value-not-allowed')));
    await put(SITE);
    await eventually(() => assert.ok(!rulesOf(uri).includes('value-not-allowed')));
    await put(SITE.replace('kind: camera', 'kind: camra'));
    await eventually(() => assert.ok(rulesOf(uri).includes('value-not-allowed')));
    await vscode.workspace.fs.delete(uri);
    await eventually(() => assert.deepEqual(rulesOf(uri), []));
  });

  it('are reported at once where an item is wrong, and where it lacks something once the cursor leaves it', async () => {
    const editor = await edit(SITE);
    const { uri } = editor.document;
    const shown: string[][] = [];
    const watching = vscode.languages.onDidChangeDiagnostics(() => shown.push(rulesOf(uri)));
    const end = editor.document.lineAt(editor.document.lineCount - 1).range.end;
    editor.selection = new vscode.Selection(end, end);
    for (const text of '  - {from: core/2, lenght: 3 m') await vscode.commands.executeCommand('type', { text });
    await eventually(() => assert.ok(shown.some((rules) => rules.includes('unknown-key'))));
    const first = shown.find((rules) => rules.includes('unknown-key')) ?? [];
    assert.ok(!first.includes('missing-key'), 'the other end is not there yet');
    editor.selection = new vscode.Selection(0, 0, 0, 0);
    await eventually(() => assert.ok(rulesOf(uri).includes('missing-key')));
    watching.dispose();
  });

  it('have quick fixes that say what they do', async () => {
    const editor = await edit(SITE.replace('to: gate-cam', 'to: orchard'));
    const titles = (await actions(editor, 'unknown-name')).map(({ title }) => title);
    assert.deepEqual(titles, [...new Set(titles)]);
    assert.ok(titles.includes('Declare device orchard as a camera'), titles.join('\n'));
    assert.ok(!titles.some((title) => title.startsWith('Accept unknown-name')));
  });

  it('of a device in the first column are put right', async () => {
    const editor = await edit(SITE.replace('  gate-cam: ', 'gate-cam: '));
    const [fix] = (await actions(editor, 'unknown-key')).filter(({ title }) => title.startsWith('Indent gate-cam'));
    assert.ok(fix?.edit);
    await vscode.workspace.applyEdit(fix.edit);
    assert.equal(editor.document.getText(), SITE);
    await eventually(() => assert.ok(!rulesOf(editor.document.uri).includes('unknown-key')));
  });
});
