// Made files in a real VS Code: the same as from the command line, made again when the site is edited, and saved to a
// folder. Runs inside the extension host, on a copy of samples/first-draft.
import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import {
  chmodSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  readdirSync,
  rmSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import * as vscode from 'vscode';
import { writeOnDisk } from '../../client/src/write-on-disk.ts';
import { NotWritten } from '../../client/src/write-whole.ts';
import { eventually } from './eventually.ts';

describe('what is made for the equipment, in the editor', () => {
  let folder: string;

  beforeEach(() => (folder = mkdtempSync(join(tmpdir(), 'plumbline-made-'))));
  afterEach(() => rmSync(folder, { recursive: true }));

  function fileOf(name: string): vscode.Uri {
    const [first] = vscode.workspace.workspaceFolders ?? [];
    assert.ok(first, 'a folder is open');
    return vscode.Uri.joinPath(first.uri, name);
  }

  const filesIn = (root: string): string[] =>
    readdirSync(root, { recursive: true, encoding: 'utf8' })
      .filter((path) => statSync(join(root, path)).isFile())
      .sort();

  /** The files of the command line, by path. */
  function written(kind: string): Map<string, string> {
    const program = join(__dirname, '..', 'plumbline.cjs');
    const out = join(folder, 'cli');
    execFileSync(process.execPath, [program, 'make', kind, '--site', fileOf('').fsPath, '--out', out], {
      env: { ...process.env, ELECTRON_RUN_AS_NODE: '1' },
      stdio: 'pipe',
    });
    return new Map(filesIn(out).map((path) => [path, readFileSync(join(out, path), 'utf8')]));
  }

  async function previews(kind: string): Promise<readonly vscode.Uri[]> {
    const site = fileOf('site.site.yaml');
    await vscode.window.showTextDocument(await vscode.workspace.openTextDocument(site));
    const shown = await vscode.commands.executeCommand<readonly vscode.Uri[]>('plumbline.make', site, { kind });
    assert.ok(shown.length > 0, 'nothing was made');
    return shown;
  }

  const pathOf = (uri: vscode.Uri): string => uri.path.split('/').slice(2).join('/');

  for (const [kind, language] of [
    ['iproute2', 'shellscript'],
    ['networkd', 'ini'],
    ['port-table', undefined],
  ] as const) {
    it(`is of ${kind} what the command line writes`, async () => {
      const expected = written(kind);
      const shown = await previews(kind);
      assert.deepEqual(shown.map(pathOf).sort(), [...expected.keys()]);
      for (const uri of shown) {
        const document = await vscode.workspace.openTextDocument(uri);
        assert.equal(document.getText(), expected.get(pathOf(uri)), uri.path);
      }
      const page = shown.find(({ path }) => path.endsWith('.html'));
      if (page !== undefined) {
        const title = page.path.slice(page.path.lastIndexOf('/') + 1).replace('.html', '');
        await eventually(() => {
          const tab = vscode.window.tabGroups.all.flatMap(({ tabs }) => tabs).find(({ label }) => label === title);
          assert.ok(tab?.input instanceof vscode.TabInputWebview);
        });
        return;
      }
      const front = vscode.window.activeTextEditor?.document;
      assert.equal(front?.uri.toString(), shown[0]?.toString());
      if (language !== undefined && (await vscode.languages.getLanguages()).includes(language))
        assert.equal(front?.languageId, language);
    });
  }

  it('is made anew when the site is edited', async () => {
    const [first] = await previews('iproute2');
    assert.ok(first);
    const preview = await vscode.workspace.openTextDocument(first);
    assert.match(preview.getText(), /^# Made by plumbline from the site Harrow Lane\.$/m);

    const site = await vscode.workspace.openTextDocument(fileOf('site.site.yaml'));
    const before = site.getText();
    const change = async (from: string, to: string): Promise<void> => {
      const edit = new vscode.WorkspaceEdit();
      const at = site.getText().indexOf(`name: ${from}`) + 'name: '.length;
      edit.replace(site.uri, new vscode.Range(site.positionAt(at), site.positionAt(at + from.length)), to);
      assert.ok(await vscode.workspace.applyEdit(edit));
    };
    await change('Harrow Lane', 'Harrow Mill');
    await eventually(() => assert.match(preview.getText(), /^# Made by plumbline from the site Harrow Mill\.$/m));
    await change('Harrow Mill', 'Harrow Lane');
    await eventually(() => assert.match(preview.getText(), /^# Made by plumbline from the site Harrow Lane\.$/m));
    assert.equal(site.getText(), before);
    await site.save();
  });

  it('is saved to a folder, and again where nothing differs', async () => {
    const expected = written('iproute2');
    const [first] = await previews('iproute2');
    const into = join(folder, 'saved');
    const save = (): Thenable<readonly vscode.Uri[] | undefined> =>
      vscode.commands.executeCommand('plumbline.saveMade', first, vscode.Uri.file(into));
    for (const [time, prepare] of [
      ['first', () => undefined],
      ['second', () => writeFileSync(join(into, 'notes.txt'), 'mine')],
    ] as const) {
      prepare();
      assert.equal((await save())?.length, expected.size, time);
      for (const [path, text] of expected) assert.equal(readFileSync(join(into, path), 'utf8'), text);
    }
    assert.equal(readFileSync(join(into, 'notes.txt'), 'utf8'), 'mine');

    const [path = ''] = expected.keys();
    chmodSync(join(into, path), 0o640);
    assert.equal((await save())?.length, expected.size);
    assert.equal(statSync(join(into, path)).mode & 0o777, 0o640, 'the mode stays');
    assert.deepEqual(filesIn(into), [...expected.keys(), 'notes.txt'].sort());
  });

  it('is saved whole or not at all', async () => {
    const [first] = await previews('announcements');
    const into = join(folder, 'saved');
    // Nothing can be written there, which shows only when it is tried.
    const blocked = join(into, 'recorder', 'announced-192.168.20.5');
    mkdirSync(join(into, 'recorder'), { recursive: true });
    symlinkSync('/proc', blocked);
    const saved = await vscode.commands.executeCommand('plumbline.saveMade', first, vscode.Uri.file(into));
    assert.deepEqual(saved, []);
    rmSync(blocked);
    assert.deepEqual(filesIn(into), []);
  });

  it('is written on the disk whole or not at all', async () => {
    const uri = (name: string): vscode.Uri => vscode.Uri.file(join(folder, name));
    await writeOnDisk([{ uri: uri('deep/one'), text: 'old' }]);
    const texts = [
      { uri: uri('deep/one'), text: 'new' },
      { uri: uri('two'), text: 'new' },
    ];
    await assert.rejects(async () => writeOnDisk([...texts, { uri: uri('deep'), text: 'new' }]), NotWritten);
    assert.deepEqual(filesIn(folder), ['deep/one']);
    assert.equal(readFileSync(join(folder, 'deep', 'one'), 'utf8'), 'old');
    await writeOnDisk(texts);
    assert.deepEqual(filesIn(folder), ['deep/one', 'two']);
    assert.equal(readFileSync(join(folder, 'deep', 'one'), 'utf8'), 'new');
  });
});
