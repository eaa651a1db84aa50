// An audit in a real VS Code: ffprobe's readings of a stream compared with the site; fixed, and cleared.
// Runs inside the extension host, on a copy of samples/first-draft.
import assert from 'node:assert/strict';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import * as vscode from 'vscode';
import type { AuditAnswer } from '../../server/src/lsp/audit-request.ts';
import { eventually } from './eventually.ts';

describe('an audit, in the editor', () => {
  let folder: string;

  before(() => (folder = mkdtempSync(join(tmpdir(), 'plumbline-audit-'))));
  after(() => rmSync(folder, { recursive: true }));

  it('shows what differs in the problems, with a fix and a page, until it is cleared', async () => {
    const [first] = vscode.workspace.workspaceFolders ?? [];
    assert.ok(first, 'a folder is open');
    const document = await vscode.workspace.openTextDocument(vscode.Uri.joinPath(first.uri, 'streams.site.yaml'));
    await vscode.window.showTextDocument(document);
    const before = document.getText();
    // The output of ffprobe 5.1, without values that are not read; the site declares 2560x1440 at 20 pictures/s.
    const pictures = { width: 1920, height: 1080, avg_frame_rate: '10/1' };
    const video = { index: 0, codec_type: 'video', codec_name: 'h264', ...pictures };
    const probe = join(folder, 'probe.json');
    writeFileSync(probe, JSON.stringify({ streams: [video], format: { filename: 'paddock.sdp' } }));

    const told = (): vscode.Diagnostic[] =>
      vscode.languages.getDiagnostics(document.uri).filter(({ source }) => source === 'plumbline audit');
    const codes = (): string[] =>
      told()
        .map(({ code }) => String(typeof code === 'object' ? code.value : code))
        .sort();
    const said = { kind: 'probe', uri: vscode.Uri.file(probe).toString() };
    const answer = await vscode.commands.executeCommand<AuditAnswer>('plumbline.audit', document.uri, said);
    assert.ok('found' in answer, JSON.stringify(answer));
    assert.equal(answer.found.length, 2);
    await eventually(() => assert.deepEqual(codes(), ['frame-rate-differs', 'size-differs']));

    const size = told().find(({ message }) => message.includes('1920x1080'));
    assert.ok(size);
    assert.equal(document.getText(size.range), '2560x1440');
    assert.ok(typeof size.code === 'object');
    assert.equal(size.code.target.toString(true), 'command:plumbline.showRule?["size-differs"]');
    const actions = await vscode.commands.executeCommand<vscode.CodeAction[]>(
      'vscode.executeCodeActionProvider',
      document.uri,
      size.range,
      vscode.CodeActionKind.QuickFix.value,
    );
    const fix = actions.find(({ title }) => title === 'Declare 1920x1080 as size of paddock');
    assert.ok(fix?.edit, actions.map(({ title }) => title).join('; '));
    assert.ok(await vscode.workspace.applyEdit(fix.edit));
    // Its other findings stay, beside those of the rules.
    await eventually(() => assert.deepEqual(codes(), ['frame-rate-differs']));
    assert.ok(vscode.languages.getDiagnostics(document.uri).some(({ source }) => source === 'plumbline'));

    for (const time of ['first', 'again']) {
      await vscode.commands.executeCommand('plumbline.showAudit', document.uri);
      const figures = vscode.window.activeTextEditor?.document;
      assert.equal(figures?.uri.scheme, 'plumbline-audit', time);
      assert.match(figures.getText(), /1920x1080/, time);
      await vscode.commands.executeCommand('workbench.action.closeActiveEditor');
      await vscode.window.showTextDocument(document);
    }

    await vscode.commands.executeCommand('plumbline.clearAudits', document.uri);
    await eventually(() => assert.deepEqual(codes(), []));
    await vscode.commands.executeCommand('undo');
    await eventually(() => assert.equal(document.getText(), before));
    await document.save();
  });

  it('is drawn from its figures', async () => {
    const [first] = vscode.workspace.workspaceFolders ?? [];
    assert.ok(first, 'a folder is open');
    const file = vscode.Uri.joinPath(first.uri, 'recording.site.yaml');
    mkdirSync(join(folder, 'paddock'));
    for (const minute of ['00', '01', '03'])
      writeFileSync(join(folder, 'paddock', `2026-11-28_10-${minute}-00+0000.mp4`), Buffer.alloc(9_000_000));
    const said = { kind: 'recordings', uri: vscode.Uri.file(folder).toString(), isCopy: true };
    const answer = await vscode.commands.executeCommand<AuditAnswer>('plumbline.audit', file, said);
    assert.ok('found' in answer, JSON.stringify(answer));
    await vscode.commands.executeCommand('plumbline.showAudit', file);
    const figures = vscode.window.activeTextEditor?.document.uri;
    assert.equal(figures?.scheme, 'plumbline-audit');
    await vscode.commands.executeCommand('plumbline.draw', figures, { kind: 'recording', subject: 'paddock' });
    const drawn = (): vscode.Tab | undefined =>
      vscode.window.tabGroups.all.flatMap(({ tabs }) => tabs).find(({ label }) => label === 'Recording paddock');
    await eventually(() => assert.ok(drawn()));
    await vscode.commands.executeCommand('plumbline.clearAudits', file);
    await eventually(() =>
      assert.ok(
        vscode.window.tabGroups.all
          .flatMap(({ tabs }) => tabs)
          .some(({ label }) => label === 'Recording in time: paddock'),
      ),
    );
    await vscode.commands.executeCommand('workbench.action.closeEditorsInOtherGroups');
  });
});
