import assert from 'node:assert/strict';
import * as vscode from 'vscode';

describe('trial', () => {
  it('activates', async () => {
    const folder = vscode.workspace.workspaceFolders?.[0];
    assert.ok(folder);
    const file = (await vscode.workspace.findFiles('**/*.site.yaml'))[0];
    assert.ok(file);
    await vscode.window.showTextDocument(await vscode.workspace.openTextDocument(file));
    const until = Date.now() + 10000;
    while (Date.now() < until && vscode.languages.getDiagnostics(file).length === 0) await new Promise((r) => setTimeout(r, 50));
    assert.equal(vscode.languages.getDiagnostics(file).length, 1);
  });
});
