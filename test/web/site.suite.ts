// samples/first-draft in the editor of a browser alone: no disk, no Node, the language server in a web worker.
// What is expected lies in the folder as expected.json.
import * as vscode from 'vscode';
import { mistakes } from '../first-draft.ts';
import { eventually } from '../vscode/eventually.ts';
import { addressClash, uplink } from '../vscode/first-draft.ts';
import { showsRate } from '../vscode/rates.ts';

const ruleOf = ({ code }: vscode.Diagnostic): string => String(typeof code === 'object' ? code.value : code);

function equal(actual: unknown, expected: unknown): void {
  const [is, should] = [actual, expected].map((value) => JSON.stringify(value, null, 1));
  if (is !== should) throw new Error(`it is ${is} and should be ${should}`);
}

function fileOf(name: string): vscode.Uri {
  const folder = vscode.workspace.workspaceFolders?.[0];
  if (folder === undefined) throw new Error('no folder is open');
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
  if (!text.includes(from) || offset < 0)
    throw new Error(`${document.uri.path} does not hold ${from} and then ${word}`);
  return document.positionAt(offset);
}

describe('samples/first-draft in a browser alone', () => {
  it('is on no disk', () => {
    equal(fileOf('').scheme === 'file', false);
    equal(typeof process === 'undefined' || process.versions?.node === undefined, true);
  });

  // The first file that is opened has mistakes that only the files beside it reveal.
  for (const file of new Set(mistakes.map((mistake) => mistake.file))) {
    it(`shows the mistakes of ${file} at their words, and nothing else`, async () => {
      const expected = mistakes
        .filter((mistake) => mistake.file === file)
        .map(({ severity, rule, words }) => `${severity} ${rule} [${words}]`);
      const document = await open(file);
      await eventually(() =>
        equal(
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
    const expected = JSON.parse(
      new TextDecoder().decode(await vscode.workspace.fs.readFile(fileOf('expected.json'))),
    ) as { peaks: number[] };
    const document = await open(uplink.file);
    const hovers = await vscode.commands.executeCommand<vscode.Hover[]>(
      'vscode.executeHoverProvider',
      document.uri,
      placeOf(document, uplink.from, uplink.line),
    );
    const text = hovers
      .flatMap(({ contents }) => contents)
      .map((part) => (typeof part === 'string' ? part : part.value))
      .join('\n');
    equal(
      expected.peaks.map((rate) => [rate, showsRate(text, rate)]),
      expected.peaks.map((rate) => [rate, true]),
    );
  });

  it("leads from a problem to its rule's page", async () => {
    const document = await open(addressClash.file);
    const [problem] = vscode.languages
      .getDiagnostics(document.uri)
      .filter((candidate) => ruleOf(candidate) === addressClash.rule);
    const target = typeof problem?.code === 'object' ? problem.code.target : undefined;
    const words = JSON.parse(decodeURIComponent(target?.query ?? '[]')) as unknown[];
    equal([target?.scheme, words], ['command', [addressClash.rule]]);
    await vscode.commands.executeCommand(target?.path ?? '', ...words);
    const titles = (): string[] => vscode.window.tabGroups.all.flatMap(({ tabs }) => tabs.map(({ label }) => label));
    await eventually(() => equal(titles().filter((title) => title.includes(`${addressClash.rule}.md`)).length, 1));
  });

  it('shows what is made for the equipment, as the command line writes it, and saves it', async () => {
    const site = await open('site.site.yaml');
    const expected = JSON.parse(
      new TextDecoder().decode(await vscode.workspace.fs.readFile(fileOf('expected.json'))),
    ) as { made: string };
    const [shown, ...others] = await vscode.commands.executeCommand<vscode.Uri[]>('plumbline.make', site.uri, {
      kind: 'dnsmasq',
    });
    if (shown === undefined) throw new Error('nothing was made');
    equal(others, []);
    equal((await vscode.workspace.openTextDocument(shown)).getText(), expected.made);
    const into = fileOf('made');
    const written = await vscode.commands.executeCommand<vscode.Uri[]>('plumbline.saveMade', shown, into);
    equal(
      written.map(({ path }) => path),
      [vscode.Uri.joinPath(into, 'dnsmasq.conf').path],
    );
    equal(
      new TextDecoder().decode(await vscode.workspace.fs.readFile(vscode.Uri.joinPath(into, 'dnsmasq.conf'))),
      expected.made,
    );
  });

  it('draws the network beside the text, which follows an edit', async () => {
    const site = await open('site.site.yaml');
    const titles = (): string[] => vscode.window.tabGroups.all.flatMap(({ tabs }) => tabs.map(({ label }) => label));
    await vscode.commands.executeCommand('plumbline.draw', site.uri, { kind: 'network', subject: '' });
    // The page has asked for it: it has its title from the picture.
    await eventually(() => equal(titles().includes('Network of Harrow Lane'), true));
    const at = placeOf(site, 'Harrow Lane', 'name:');
    const edit = new vscode.WorkspaceEdit();
    edit.replace(site.uri, new vscode.Range(at, at.translate(0, 'Harrow'.length)), 'Barrow');
    equal(await vscode.workspace.applyEdit(edit), true);
    await eventually(() => equal(titles().includes('Network of Barrow Lane'), true));
    await vscode.commands.executeCommand('workbench.action.closeEditorsInOtherGroups');
    await vscode.window.showTextDocument(site);
    await vscode.commands.executeCommand('undo');
  });

  it('draws every kind beside the text', async () => {
    const site = await open('site.site.yaml');
    const { drawn } = JSON.parse(
      new TextDecoder().decode(await vscode.workspace.fs.readFile(fileOf('expected.json'))),
    ) as { drawn: { kind: string; subject: string; title: string }[] };
    equal(drawn.length > 7, true);
    for (const { kind, subject, title } of drawn) {
      await vscode.commands.executeCommand('plumbline.draw', site.uri, { kind, subject });
      const titles = (): string[] => vscode.window.tabGroups.all.flatMap(({ tabs }) => tabs.map(({ label }) => label));
      await eventually(() => equal(titles().includes(title) ? title : titles(), title));
    }
    await vscode.commands.executeCommand('workbench.action.closeEditorsInOtherGroups');
  });

  it('says that no file can be read for an audit', async () => {
    const site = await open('site.site.yaml');
    const answer = await vscode.commands.executeCommand<{ cannot?: string }>('plumbline.audit', site.uri);
    equal(answer.cannot?.startsWith('In a browser Plumbline cannot read files for an audit.'), true);
  });

  it('puts an address clash right from a code action, and the problem goes', async () => {
    const document = await open(addressClash.file);
    const clashes = (): vscode.Diagnostic[] =>
      vscode.languages.getDiagnostics(document.uri).filter((problem) => ruleOf(problem) === addressClash.rule);
    const clash = clashes().find(({ range }) =>
      range.contains(placeOf(document, addressClash.address, addressClash.line)),
    );
    if (clash === undefined) throw new Error('no clash is told');
    const actions = await vscode.commands.executeCommand<vscode.CodeAction[]>(
      'vscode.executeCodeActionProvider',
      document.uri,
      clash.range,
      vscode.CodeActionKind.QuickFix.value,
    );
    const fix = actions.find(({ title }) => addressClash.fix.test(title));
    if (fix?.edit === undefined) throw new Error(`no fix among ${actions.map(({ title }) => title).join('; ')}`);
    equal(await vscode.workspace.applyEdit(fix.edit), true);
    await eventually(() => equal(clashes().length, 0));
    equal(await document.save(), true);
  });

  it('starts the server anew on the command', async () => {
    const document = await open(addressClash.file);
    await vscode.commands.executeCommand('plumbline.restartServer');
    await eventually(() => equal(vscode.languages.getDiagnostics(document.uri).length > 0, true));
  });
});
