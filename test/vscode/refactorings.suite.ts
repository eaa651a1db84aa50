// A refactoring in a real VS Code: a section moved to a file that is made, and all of it undone.
import assert from 'node:assert/strict';
import * as vscode from 'vscode';
import { eventually } from './eventually.ts';

const folder = (): vscode.Uri => {
  const [first] = vscode.workspace.workspaceFolders ?? [];
  assert.ok(first, 'a folder is open');
  return first.uri;
};

async function isThere(uri: vscode.Uri): Promise<boolean> {
  return vscode.workspace.fs.stat(uri).then(
    () => true,
    () => false,
  );
}

describe('a refactoring in the editor', () => {
  it('moves a section to a file of its own, which is undone as one', async () => {
    const source = vscode.Uri.joinPath(folder(), 'recording.site.yaml');
    const made = vscode.Uri.joinPath(folder(), 'volumes.site.yaml');
    const document = await vscode.workspace.openTextDocument(source);
    const editor = await vscode.window.showTextDocument(document);
    const before = document.getText();
    const at = document.positionAt(before.indexOf('volumes:') + 3);
    editor.selection = new vscode.Selection(at, at);
    const action = await eventually(async () => {
      const found = await vscode.commands.executeCommand<vscode.CodeAction[]>(
        'vscode.executeCodeActionProvider',
        source,
        new vscode.Range(at, at),
        vscode.CodeActionKind.RefactorMove.value,
        10,
      );
      const own = found.find(({ title }) => title === 'Move volumes to volumes.site.yaml');
      assert.ok(own?.edit, found.map(({ title }) => title).join('; '));
      return own;
    });
    assert.ok(action.edit && (await vscode.workspace.applyEdit(action.edit, { isRefactoring: true })));
    const text = (await vscode.workspace.openTextDocument(made)).getText();
    assert.match(text, /^# yaml-language-server: .*\n\nvolumes:\n {2}archive: .*\n$/);
    assert.equal(document.getText(), before.replace(/volumes:[^]*(?=recordings:)/, ''));
    // The site still has the volume.
    const named = document.positionAt(document.getText().indexOf('volume: archive') + 10);
    await eventually(async () => {
      const places = await vscode.commands.executeCommand<(vscode.Location | vscode.LocationLink)[]>(
        'vscode.executeDefinitionProvider',
        source,
        named,
      );
      assert.deepEqual(
        places.map((place) => ('uri' in place ? place.uri : place.targetUri).toString()),
        [made.toString()],
      );
    });

    await vscode.window.showTextDocument(document);
    await vscode.commands.executeCommand('undo');
    await eventually(async () => {
      assert.equal(document.getText(), before);
      assert.equal(await isThere(made), false, 'the file is gone again');
    });
    await document.save();
  });
});
