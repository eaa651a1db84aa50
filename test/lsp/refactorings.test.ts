// Refactorings over the protocol, as an editor asks for them.
import assert from 'node:assert/strict';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import {
  type ClientCapabilities,
  type CodeAction,
  CodeActionRequest,
  CodeActionResolveRequest,
  CreateFile,
  DidOpenTextDocumentNotification,
  TextDocumentEdit,
  type TextEdit,
  type WorkspaceEdit,
} from 'vscode-languageserver-protocol/node';
import { type Able, Client, applied, positionOf } from './client.ts';

const HOME = `# yaml-language-server: $schema=site.schema.json
devices:
  core: {kind: switch, ports: {1-3: {}}}   # under the stairs

# Paced out.
cables:
  - {from: core/1, to: core/2}
`;

const later: ClientCapabilities['textDocument'] = {
  codeAction: {
    dataSupport: true,
    resolveSupport: { properties: ['edit'] },
    codeActionLiteralSupport: { codeActionKind: { valueSet: ['refactor.move', 'refactor.rewrite'] } },
  },
};
const makesFiles: ClientCapabilities['workspace'] = {
  workspaceEdit: { documentChanges: true, resourceOperations: ['create', 'rename', 'delete'] },
};

describe('Refactorings over the protocol', () => {
  let folder: string;
  let client: Client;
  let home: string;
  let cables: string;

  async function start(able: Able, text = HOME): Promise<void> {
    client = await Client.startHere(able);
    home = await client.open(join(folder, 'home.site.yaml'), text);
    await client.diagnostics(home);
  }

  beforeEach(() => {
    folder = mkdtempSync(join(tmpdir(), 'plumbline-refactorings-'));
    cables = pathToFileURL(join(folder, 'cables.site.yaml')).href;
  });
  afterEach(async () => {
    assert.equal(await client.stop(), 0);
    rmSync(folder, { recursive: true });
  });

  async function offered(uri: string, text: string, word: string, only?: string[]): Promise<CodeAction[]> {
    const start = positionOf(text, word);
    const found = await client.connection.sendRequest(CodeActionRequest.type, {
      textDocument: { uri },
      range: { start, end: start },
      context: { diagnostics: [], ...(only !== undefined && { only }) },
    });
    return ((found ?? []) as CodeAction[]).filter(({ kind }) => kind?.startsWith('refactor') === true);
  }

  async function chosen(actions: readonly CodeAction[], title: string): Promise<WorkspaceEdit> {
    const action = actions.find((each) => each.title === title);
    assert.ok(action !== undefined, actions.map((each) => each.title).join('; '));
    const { edit } =
      action.edit === undefined ? await client.connection.sendRequest(CodeActionResolveRequest.type, action) : action;
    assert.ok(edit !== undefined);
    return edit;
  }

  /** The texts after an edit, applied in its order as a client does. */
  function after(edit: WorkspaceEdit, texts: Readonly<Record<string, string>>): Record<string, string> {
    const left = { ...texts };
    for (const change of edit.documentChanges ?? []) {
      if (CreateFile.is(change)) {
        assert.equal(left[change.uri], undefined);
        left[change.uri] = '';
      } else if (TextDocumentEdit.is(change)) {
        const { uri } = change.textDocument;
        left[uri] = applied(left[uri] ?? '', change.edits as TextEdit[]);
      }
    }
    for (const [uri, edits] of Object.entries(edit.changes ?? {})) left[uri] = applied(left[uri] ?? '', edits);
    return left;
  }

  const WITHOUT = HOME.replace(/\n# Paced[^]*/, '');
  const MOVED =
    '# yaml-language-server: $schema=site.schema.json\n\n# Paced out.\ncables:\n  - {from: core/1, to: core/2}\n';

  for (const [sort, textDocument] of [
    ['asks for their edits later', later],
    ['takes their edits at once', {}],
  ] as const) {
    it(`make a file, for a client that ${sort}`, async () => {
      await start({ capabilities: { workspace: makesFiles, textDocument } });
      const actions = await offered(home, HOME, 'cab|les:', ['refactor']);
      assert.deepEqual(
        actions.map(({ title, kind }) => `${kind}: ${title}`),
        ['refactor.move: Move cables to cables.site.yaml'],
      );
      assert.equal(actions[0]?.edit === undefined, textDocument === later);
      const edit = await chosen(actions, 'Move cables to cables.site.yaml');
      assert.deepEqual(after(edit, { [home]: HOME }), { [home]: WITHOUT, [cables]: MOVED });
      // The site is the same with the file that was made.
      await client.change(home, WITHOUT);
      await client.open(join(folder, 'cables.site.yaml'), MOVED);
      await client.diagnostics(cables);
      assert.match((await client.hover(cables, positionOf(MOVED, 'core|/1'))) ?? '', /core/);
    });
  }

  it('of files alone are not offered to a client that cannot make any', async () => {
    await start({ capabilities: { workspace: { workspaceEdit: { documentChanges: true } } } });
    assert.deepEqual(await offered(home, HOME, 'cab|les:'), []);
  });

  for (const isOpen of [true, false]) {
    it(`add to a file that is there, ${isOpen ? 'open' : 'on disk alone'}, for any client`, async () => {
      const there = 'cables:\n    - {from: core/3, to: core/1}   # spare\n';
      writeFileSync(join(folder, 'cables.site.yaml'), isOpen ? '' : there);
      await start({});
      if (isOpen) await client.diagnostics(await client.open(join(folder, 'cables.site.yaml'), there));
      const edit = await chosen(await offered(home, HOME, 'cab|les:'), 'Move cables to cables.site.yaml');
      assert.deepEqual(after(edit, { [home]: HOME, [cables]: there }), {
        [home]: WITHOUT,
        [cables]: `${there}    # Paced out.\n    - {from: core/1, to: core/2}\n`,
      });
    });
  }

  it('keep the ends of lines, in files that are made too', async () => {
    const text = HOME.replaceAll('\n', '\r\n');
    await start({ capabilities: { workspace: makesFiles, textDocument: later } }, text);
    const edit = await chosen(await offered(home, text, 'cab|les:'), 'Move cables to cables.site.yaml');
    assert.deepEqual(after(edit, { [home]: text }), {
      [home]: WITHOUT.replaceAll('\n', '\r\n'),
      [cables]: MOVED.replaceAll('\n', '\r\n'),
    });
  });

  it('are of the kinds that are asked for', async () => {
    await start({ capabilities: { textDocument: later } });
    assert.deepEqual(await offered(home, HOME, '1|-3', ['refactor.move']), []);
    const actions = await offered(home, HOME, '1|-3', ['refactor.rewrite']);
    const edit = await chosen(actions, 'Write 1-3 as an entry for each port');
    assert.deepEqual(after(edit, { [home]: HOME }), { [home]: HOME.replace('1-3: {}', '1: {}, 2: {}, 3: {}') });
    assert.deepEqual(client.initialized?.capabilities.codeActionProvider, {
      codeActionKinds: ['quickfix', 'source.fixAll.plumbline', 'refactor.move', 'refactor.rewrite'],
      resolveProvider: true,
    });
  });

  it('do nothing where the text has changed before one was chosen', async () => {
    await start({ capabilities: { textDocument: later } });
    const [action] = await offered(home, HOME, '1|-3');
    assert.ok(action !== undefined);
    await client.change(home, HOME.replace('1-3', 'lan'));
    assert.equal((await client.connection.sendRequest(CodeActionResolveRequest.type, action)).edit, undefined);
  });

  it('make files in a folder that only the client can reach', async () => {
    client = await Client.startHere({ capabilities: { workspace: makesFiles } });
    const uri = 'vscode-vfs://example/home/home.site.yaml';
    client.connection.onRequest('plumbline/listFiles', () => [uri]);
    client.connection.onRequest('plumbline/readFile', () => ({ text: HOME }));
    await client.connection.sendNotification(DidOpenTextDocumentNotification.type, {
      textDocument: { uri, languageId: 'yaml', version: 1, text: HOME },
    });
    const edit = await chosen(await offered(uri, HOME, 'cab|les:'), 'Move cables to cables.site.yaml');
    assert.deepEqual(after(edit, { [uri]: HOME }), {
      [uri]: WITHOUT,
      'vscode-vfs://example/home/cables.site.yaml': MOVED,
    });
  });
});
