// samples/first-draft in a real VS Code, through the API of extensions: findings and their places, a hover, and a fixed
// address clash. Runs inside the extension host, on a copy of the sample.
import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import * as vscode from 'vscode';
import { mistakes } from '../first-draft.ts';
import { eventually } from './eventually.ts';
import { addressClash, uplink } from './first-draft.ts';
import { showsRate } from './rates.ts';
import type { LinkPeaks } from './report.ts';

const own = (diagnostic: vscode.Diagnostic): boolean => diagnostic.source === 'plumbline';
const ruleOf = ({ code }: vscode.Diagnostic): string => String(typeof code === 'object' ? code.value : code);

function fileOf(name: string): vscode.Uri {
  const folder = vscode.workspace.workspaceFolders?.[0];
  assert.ok(folder, 'a folder is open');
  return vscode.Uri.joinPath(folder.uri, name);
}

async function open(name: string): Promise<vscode.TextDocument> {
  const document = await vscode.workspace.openTextDocument(fileOf(name));
  await vscode.window.showTextDocument(document);
  return document;
}

/** Where a word stands in a document: the first from a text on. */
function placeOf(document: vscode.TextDocument, word: string, from: string): vscode.Position {
  const text = document.getText();
  const offset = text.indexOf(word, text.indexOf(from));
  assert.ok(text.includes(from) && offset >= 0, `${document.fileName} holds ${from} and then ${word}`);
  return document.positionAt(offset);
}

describe('samples/first-draft in the editor', () => {
  for (const file of new Set(mistakes.map((mistake) => mistake.file))) {
    it(`shows the mistakes of ${file} at their words, and nothing else`, async () => {
      const expected = mistakes
        .filter((mistake) => mistake.file === file)
        .map(({ severity, rule, words }) => `${severity} ${rule} [${words}]`);
      const document = await open(file);
      await eventually(() =>
        assert.deepEqual(
          vscode.languages
            .getDiagnostics(document.uri)
            .map((problem) => {
              const severity = vscode.DiagnosticSeverity[problem.severity].toLowerCase();
              return `${severity} ${ruleOf(problem)} [${document.getText(problem.range)}]`;
            })
            .sort(),
          expected.sort(),
        ),
      );
    });
  }

  it('says on hover over an uplink what the report says', async () => {
    const peaks = JSON.parse(process.env['PLUMBLINE_UPLINK'] ?? '') as LinkPeaks; // from `plumbline report`
    const document = await open(uplink.file);
    await eventually(async () => {
      const hovers = await vscode.commands.executeCommand<vscode.Hover[]>(
        'vscode.executeHoverProvider',
        document.uri,
        placeOf(document, uplink.from, uplink.line),
      );
      const text = hovers
        .flatMap(({ contents }) => contents)
        .map((part) => (typeof part === 'string' ? part : part.value))
        .join('\n');
      for (const rate of [peaks.forward, peaks.backward])
        assert.ok(showsRate(text, rate), `${rate} bit/s in:\n${text}`);
    });
  });

  it('puts an address clash right from a code action, and the problem goes', async () => {
    const document = await open(addressClash.file);
    const clashes = (): vscode.Diagnostic[] =>
      vscode.languages
        .getDiagnostics(document.uri)
        .filter((problem) => own(problem) && ruleOf(problem) === addressClash.rule);
    const clash = await eventually(() => {
      const found = clashes().find(({ range }) =>
        range.contains(placeOf(document, addressClash.address, addressClash.line)),
      );
      assert.ok(found);
      return found;
    });
    const actions = await vscode.commands.executeCommand<vscode.CodeAction[]>(
      'vscode.executeCodeActionProvider',
      document.uri,
      clash.range,
      vscode.CodeActionKind.QuickFix.value,
    );
    const fix = actions.find(({ title }) => addressClash.fix.test(title));
    assert.ok(fix?.edit, `a fix among ${actions.map(({ title }) => title).join('; ')}`);
    const before = document.getText();
    assert.ok(await vscode.workspace.applyEdit(fix.edit));
    assert.notEqual(document.getText(), before);
    assert.ok(await document.save());
    assert.equal(readFileSync(document.uri.fsPath, 'utf8'), document.getText());
    await eventually(() => assert.deepEqual(clashes(), []));
  });

  it('leaves the settings of other YAML as they are', () => {
    const editor = vscode.workspace.getConfiguration('editor', { languageId: 'yaml' });
    const { defaultLanguageValue } = editor.inspect('semanticHighlighting.enabled') ?? {};
    assert.equal(defaultLanguageValue, undefined);
  });

  it('restarts the language server on the command', async () => {
    const document = await open(addressClash.file);
    const problems = (): number => vscode.languages.getDiagnostics(document.uri).filter(own).length;
    await vscode.commands.executeCommand('plumbline.restartServer');
    await eventually(() => assert.ok(problems() > 0));
  });

  // Windows has no ps.
  if (process.platform !== 'win32')
    it('starts a language server that ended by itself again', async () => {
      const servers = (): number[] =>
        execFileSync('ps', ['-A', '-o', 'pid=,ppid=,args='], { encoding: 'utf8' })
          .split('\n')
          .map((line) => /^\s*(\d+)\s+(\d+)\s+(.*)$/.exec(line))
          .filter((found) => Number(found?.[2]) === process.pid && found?.[3]?.includes('server.cjs'))
          .map((found) => Number(found?.[1]));
      const document = await open(addressClash.file);
      // The one that the command of the test before has ended may take a moment to go.
      const first = await eventually(() => {
        const [only, ...others] = servers();
        assert.ok(only !== undefined && others.length === 0, 'one server runs');
        return only;
      });
      process.kill(first, 'SIGKILL');
      await eventually(() => assert.ok(servers().some((pid) => pid !== first)));
      const edit = new vscode.WorkspaceEdit();
      const line = placeOf(document, 'devices:', 'devices:').line + 1;
      edit.insert(document.uri, new vscode.Position(line, 0), '  doorbell: {kind: camera, address: 192.168.20.32}\n');
      assert.ok(await vscode.workspace.applyEdit(edit));
      await eventually(() =>
        assert.ok(
          vscode.languages
            .getDiagnostics(document.uri)
            .filter(own)
            .some(({ range }) => range.start.line === line && document.getText(range) === '192.168.20.32'),
        ),
      );
      await vscode.commands.executeCommand('workbench.action.files.revert');
    });
});
