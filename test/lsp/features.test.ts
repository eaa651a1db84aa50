// Each language feature over the protocol, as an editor asks for it.
import assert from 'node:assert/strict';
import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import {
  ApplyWorkspaceEditRequest,
  type ClientCapabilities,
  type CodeAction,
  CodeActionRequest,
  CodeActionResolveRequest,
  CodeLensRequest,
  CodeLensResolveRequest,
  type CompletionItem,
  type CompletionList,
  CompletionRequest,
  DefinitionRequest,
  DidChangeConfigurationNotification,
  DocumentHighlightRequest,
  DocumentLinkRequest,
  type DocumentSymbol,
  DocumentSymbolRequest,
  ExecuteCommandRequest,
  FoldingRangeRequest,
  InlayHintRequest,
  type Location,
  MessageType,
  type Position,
  PrepareRenameRequest,
  type Range,
  ReferencesRequest,
  RenameRequest,
  SelectionRangeRequest,
  SemanticTokensDeltaRequest,
  SemanticTokensRequest,
  ShowMessageNotification,
  type ShowMessageParams,
  type SymbolInformation,
  type TextEdit,
  type WorkspaceEdit,
  WorkspaceSymbolRequest,
} from 'vscode-languageserver-protocol/node';
import type { FillAnswer } from '../../server/src/lsp/fill-in-request.ts';
import { type Able, Client, applied, positionOf } from './client.ts';

const NETWORK = `vlans:
  video: {id: 20, subnet: 192.168.20.0/24}
devices:
  core:
    kind: switch
    igmp-snooping: true
    ports:
      1-4: {speed: 100 Mb/s, vlan: video}
  paddock-cam: {kind: camera, address: 192.168.20.31, speed: 100Mbps}
  gate-cam: {kind: camera, address: 192.168.20.31, speed: 100 Mbps}
  recorder: {kind: server, address: 192.168.20.5, speed: 100 Mb/s}
cables:
  - {from: core/1, to: paddock-cam}
  - {from: core/2, to: recorder}
lint:
  rules: {cable-length: off}
`;

const STREAMS = `streams:
  paddock: {source: paddock-cam, transport: rtp, port: 5004, video: {codec: h264, bitrate: 6 Mb/s}, receivers: [recorder]}
`;

const ABLE: ClientCapabilities = {
  workspace: {
    configuration: true,
    didChangeConfiguration: { dynamicRegistration: true },
    workspaceEdit: { documentChanges: true, snippetEditSupport: true },
    inlayHint: { refreshSupport: true },
    codeLens: { refreshSupport: true },
  },
  textDocument: {
    completion: { completionItem: { snippetSupport: true, insertTextModeSupport: { valueSet: [1, 2] } } },
    documentSymbol: { hierarchicalDocumentSymbolSupport: true },
    codeAction: { dataSupport: true, resolveSupport: { properties: ['edit'] } },
  },
};

describe('The language features over the protocol', () => {
  let folder: string;
  let client: Client;
  let network: string;
  let streams: string;

  async function start(able: Able = {}): Promise<void> {
    folder = mkdtempSync(join(tmpdir(), 'plumbline-features-'));
    client = await Client.startHere(able);
    network = await client.open(join(folder, 'network.site.yaml'), NETWORK);
    streams = await client.open(join(folder, 'streams.site.yaml'), STREAMS);
  }

  afterEach(async () => {
    assert.equal(await client.stop(), 0);
    rmSync(folder, { recursive: true });
  });

  const at = (uri: string, word: string): { textDocument: { uri: string }; position: Position } => ({
    textDocument: { uri },
    position: positionOf(uri === network ? NETWORK : STREAMS, word),
  });

  /** The text at the found places, with the file's first letter. */
  const told = ({ uri, range }: Location): string => {
    const text = uri === network ? NETWORK : STREAMS;
    const lines = text.split('\n');
    return `${uri === network ? 'n' : 's'} ${range.start.line + 1}: ${lines[range.start.line]?.slice(range.start.character, range.end.character)}`;
  };

  async function complete(uri: string, text: string, word: string): Promise<CompletionItem[]> {
    await client.change(uri, text);
    const found = await client.connection.sendRequest(CompletionRequest.type, {
      textDocument: { uri },
      position: positionOf(text, word),
    });
    return (found as CompletionList).items;
  }

  it('says what it can', async () => {
    await start();
    const can = client.initialized?.capabilities ?? {};
    for (const provider of [
      'completionProvider',
      'definitionProvider',
      'referencesProvider',
      'documentHighlightProvider',
      'renameProvider',
      'documentSymbolProvider',
      'workspaceSymbolProvider',
      'foldingRangeProvider',
      'selectionRangeProvider',
      'documentLinkProvider',
      'semanticTokensProvider',
      'inlayHintProvider',
      'codeLensProvider',
      'codeActionProvider',
      'hoverProvider',
    ] as const)
      assert.ok(can[provider] !== undefined, provider);
  });

  it('completes half-typed text, with an edit of what is typed', async () => {
    await start({ capabilities: ABLE, initializationOptions: { suggestCommand: 'suggest' } });
    const text = NETWORK.replace('lint:', '  - {from: core/\nlint:');
    const items = await complete(network, text, '{from: core/|\n');
    const [first] = [...items].sort((a, b) => ((a.sortText ?? '') < (b.sortText ?? '') ? -1 : 1));
    assert.equal(first?.label, 'core/3');
    const edit = first.textEdit as TextEdit;
    assert.match(applied(text, [edit]), /- \{from: core\/3\n/);
    const keys = await complete(network, NETWORK.replace('{kind: server, ', '{kind: server, r, '), 'server, r|');
    assert.equal(keys.find(({ label }) => label === 'routes')?.command?.command, 'suggest');
  });

  it('gives snippets to those who take them, and plain text with its indentation to others', async () => {
    await start({ capabilities: ABLE });
    const text = `${STREAMS}  \n`;
    const position = { line: 2, character: 2 };
    await client.change(streams, text);
    const ask = async (): Promise<CompletionItem | undefined> => {
      const found = await client.connection.sendRequest(CompletionRequest.type, {
        textDocument: { uri: streams },
        position,
      });
      return (found as CompletionList).items.find(({ label }) => label === 'stream of a camera');
    };
    const snippet = await ask();
    assert.equal(snippet?.insertTextFormat, 2);
    assert.match((snippet.textEdit as TextEdit).newText, /^\$\{1:gate\}:\n  source/);
    await client.stop();
    client = await Client.startHere();
    await client.open(join(folder, 'network.site.yaml'), NETWORK);
    await client.open(join(folder, 'streams.site.yaml'), text);
    const plain = await ask();
    assert.equal(plain?.insertTextFormat, undefined);
    assert.ok(plain?.textEdit !== undefined && 'newText' in plain.textEdit);
    assert.match(plain.textEdit.newText, /^gate:\n    source: gate-cam/);
  });

  it('finds definitions, references and highlights over files', async () => {
    await start();
    const definition = await client.connection.sendRequest(DefinitionRequest.type, at(streams, 'source: pad|dock-cam'));
    assert.deepEqual((definition as Location[]).map(told), ['n 9: paddock-cam']);
    const references = await client.connection.sendRequest(ReferencesRequest.type, {
      ...at(streams, 'source: pad|dock-cam'),
      context: { includeDeclaration: false },
    });
    assert.deepEqual((references ?? []).map(told), ['n 13: paddock-cam', 's 2: paddock-cam']);
    const highlights = await client.connection.sendRequest(DocumentHighlightRequest.type, at(network, 'from: co|re/1'));
    assert.deepEqual(
      highlights?.map(({ range, kind }) => `${told({ uri: network, range })} ${kind}`),
      ['n 4: core 3', 'n 13: core 2', 'n 14: core 2'],
    );
    const rule = await client.connection.sendRequest(DefinitionRequest.type, at(network, 'cable-|length'));
    assert.ok(existsSync(fileURLToPath((rule as Location[])[0]?.uri ?? '')));
  });

  it('renames over files, and refuses with the reason', async () => {
    await start();
    const place = at(streams, 'source: pad|dock-cam');
    const prepared = await client.connection.sendRequest(PrepareRenameRequest.type, place);
    assert.ok(prepared !== null && 'placeholder' in prepared);
    assert.equal(prepared.placeholder, 'paddock-cam');
    const edit = await client.connection.sendRequest(RenameRequest.type, { ...place, newName: 'field-cam' });
    assert.match(applied(NETWORK, edit?.changes?.[network] ?? []), /  field-cam: \{kind[\s\S]*to: field-cam\}/);
    assert.match(applied(STREAMS, edit?.changes?.[streams] ?? []), /source: field-cam,/);
    await assert.rejects(
      client.connection.sendRequest(RenameRequest.type, { ...place, newName: 'gate-cam' }),
      /There is a device gate-cam already/,
    );
    await assert.rejects(
      client.connection.sendRequest(PrepareRenameRequest.type, at(network, 'ki|nd: switch')),
      /word of the site language/,
    );
  });

  it('outlines a file, and finds names in all open sites', async () => {
    await start({ capabilities: ABLE });
    const symbols = (await client.connection.sendRequest(DocumentSymbolRequest.type, {
      textDocument: { uri: network },
    })) as DocumentSymbol[];
    assert.deepEqual(
      symbols.map(({ name }) => name),
      ['vlans', 'devices', 'cables', 'lint'],
    );
    assert.deepEqual(
      symbols[1]?.children?.[0]?.children?.map(({ name }) => name),
      ['1-4'],
    );
    const found = (await client.connection.sendRequest(WorkspaceSymbolRequest.type, {
      query: 'paddock',
    })) as SymbolInformation[];
    assert.deepEqual(found.map(({ location }) => told(location)).sort(), ['n 9: paddock-cam', 's 2: paddock']);
  });

  it('folds, grows selections and links rules to their pages', async () => {
    await start();
    const folds = await client.connection.sendRequest(FoldingRangeRequest.type, { textDocument: { uri: network } });
    assert.ok(folds?.some(({ startLine, endLine }) => startLine === 3 && endLine === 7));
    const [selection] =
      (await client.connection.sendRequest(SelectionRangeRequest.type, {
        textDocument: { uri: streams },
        positions: [positionOf(STREAMS, '6 M|b/s')],
      })) ?? [];
    assert.equal(told({ uri: streams, range: selection?.range as Range }), 's 2: 6 Mb/s');
    assert.equal(told({ uri: streams, range: selection?.parent?.range as Range }), 's 2: bitrate: 6 Mb/s');
    const links = await client.connection.sendRequest(DocumentLinkRequest.type, { textDocument: { uri: network } });
    assert.match(links?.[0]?.target ?? '', /schemas\/rules\/cable-length\.md$/);
  });

  it('colours names, and tells what has changed since', async () => {
    await start();
    const full = await client.connection.sendRequest(SemanticTokensRequest.type, { textDocument: { uri: streams } });
    assert.equal((full?.data.length ?? 0) / 5, 2);
    await client.change(streams, STREAMS.replace('[recorder]', '[recorder, gate-cam]'));
    const delta = await client.connection.sendRequest(SemanticTokensDeltaRequest.type, {
      textDocument: { uri: streams },
      previousResultId: full?.resultId ?? '',
    });
    assert.ok(delta !== null && 'edits' in delta);
    assert.equal(
      delta.edits.reduce((sum, { data }) => sum + (data?.length ?? 0), 0),
      5,
    );
  });

  it('says how many more cameras fit once that is in sight', async () => {
    await start({ initializationOptions: { codeLens: { enabled: true } } });
    const [lens] =
      (await client.connection.sendRequest(CodeLensRequest.type, { textDocument: { uri: network } })) ?? [];
    assert.ok(lens !== undefined && lens.command === undefined);
    const resolved = await client.connection.sendRequest(CodeLensResolveRequest.type, lens);
    assert.match(resolved.command?.title ?? '', /more like \S+ at \S+(, then|:) /);
  });

  describe('follows settings', () => {
    const hints = async (uri: string): Promise<unknown[]> =>
      (await client.connection.sendRequest(InlayHintRequest.type, {
        textDocument: { uri },
        range: { start: { line: 0, character: 0 }, end: { line: 99, character: 0 } },
      })) ?? [];
    const lenses = async (): Promise<unknown[]> =>
      (await client.connection.sendRequest(CodeLensRequest.type, { textDocument: { uri: streams } })) ?? [];
    const changed = (settings: unknown): Promise<void> =>
      client.connection.sendNotification(DidChangeConfigurationNotification.type, { settings });

    it('that it asks for, at once when they change', async () => {
      await start({
        capabilities: ABLE,
        initializationOptions: { inlayHints: { cablesFrom: 0 } },
        settings: { inlayHints: { enabled: true, cablesFrom: 0 }, codeLens: { enabled: false } },
      });
      assert.equal((await hints(streams)).length, 1);
      assert.equal((await hints(network)).length, 2);
      assert.deepEqual(await lenses(), []);
      client.settings = { inlayHints: { enabled: true, streams: false, cablesFrom: 0 }, codeLens: { enabled: true } };
      await changed(null);
      assert.equal((await hints(network)).length, 2);
      assert.deepEqual(await hints(streams), []);
      assert.equal((await lenses()).length, 1);
      assert.ok(client.refreshed.includes('inlay hints') && client.refreshed.includes('code lenses'));
      client.settings = { inlayHints: { enabled: false, cables: true } };
      await changed(null);
      await hints(network);
      assert.deepEqual(await hints(network), []);
    });

    it('that it is sent, by a client that cannot be asked', async () => {
      await start({
        initializationOptions: { inlayHints: { cables: false, cablesFrom: 0 }, codeLens: { enabled: true } },
      });
      assert.deepEqual(await hints(network), []);
      assert.equal((await lenses()).length, 1);
      await changed({ plumbline: { inlayHints: { enabled: true, cablesFrom: 0 }, codeLens: { enabled: false } } });
      assert.equal((await hints(network)).length, 2);
      assert.deepEqual(await lenses(), []);
    });

    it('for shapes: leaves them to another extension, and takes them up again', async () => {
      await start({ capabilities: ABLE, settings: { schemaFeatures: 'off' } });
      const broken = NETWORK.replace('igmp-snooping: true', 'igmp-snoping: true');
      await client.change(network, broken);
      const has = (code: string) => (found: readonly { code?: unknown }[]) =>
        found.some((diagnostic) => diagnostic.code === code);
      await client.diagnostics(network, (found) => has('duplicate-address')(found) && !has('unknown-key')(found));
      client.settings = { schemaFeatures: 'on' };
      await changed(null);
      await client.diagnostics(network, has('unknown-key'));
    });
  });

  it('leads from a finding to the page of its rule', async () => {
    await start();
    const [first] = await client.diagnostics(network, (found) => found.length > 0);
    const href = first?.codeDescription?.href ?? '';
    assert.ok(existsSync(fileURLToPath(href)), href);
    assert.ok(href.endsWith(`/${String(first?.code)}.md`));
  });

  it('leads to the pages that the client names', async () => {
    await start({ initializationOptions: { rulePages: 'vscode-vfs://pages/rules' } });
    const [first] = await client.diagnostics(network, (found) => found.length > 0);
    assert.equal(first?.codeDescription?.href, `vscode-vfs://pages/rules/${String(first?.code)}.md`);
  });

  it('leads to a page by a command of the client', async () => {
    await start({ initializationOptions: { rulePages: 'command:show?%5B%22{rule}%22%5D' } });
    const [first] = await client.diagnostics(network, (found) => found.length > 0);
    assert.equal(first?.codeDescription?.href, `command:show?%5B%22${String(first?.code)}%22%5D`);
  });

  describe('fixes', () => {
    const actions = async (only: string[] | undefined, range: Range): Promise<CodeAction[]> =>
      ((await client.connection.sendRequest(CodeActionRequest.type, {
        textDocument: { uri: network },
        range,
        context: { diagnostics: [], ...(only !== undefined && { only }) },
      })) ?? []) as CodeAction[];
    const whole = { start: { line: 0, character: 0 }, end: { line: 0, character: 0 } };

    for (const [sort, able] of [
      ['asks for their edits later', { capabilities: ABLE }],
      ['takes their edits at once', {}],
    ] as const) {
      it(`all that is safe on save, for a client that ${sort}`, async () => {
        await start(able);
        const [action, ...others] = await actions(['source.fixAll'], whole);
        assert.equal(action?.kind, 'source.fixAll.plumbline');
        assert.deepEqual(others, []);
        assert.equal(action.edit === undefined, 'capabilities' in able);
        const resolved =
          action.edit === undefined
            ? await client.connection.sendRequest(CodeActionResolveRequest.type, action)
            : action;
        const fixed = applied(NETWORK, resolved.edit?.changes?.[network] ?? []);
        assert.equal(fixed, NETWORK.replace('100Mbps', '100 Mb/s').replace('100 Mbps', '100 Mb/s'));
        await client.change(network, fixed);
        assert.deepEqual(await actions(['source.fixAll.plumbline'], whole), []);
      });
    }

    it('all of one rule, or accepts with a reason that is typed over', async () => {
      await start({ capabilities: ABLE });
      const clash = (
        await client.diagnostics(network, (found) => found.some(({ code }) => code === 'duplicate-address'))
      ).find(({ code }) => code === 'duplicate-address');
      assert.ok(clash !== undefined);
      const found = await actions(undefined, clash.range);
      const all = found.find(({ title }) => title.startsWith('Fix all 2 of duplicate-address'));
      assert.ok(all !== undefined);
      const { edit } = await client.connection.sendRequest(CodeActionResolveRequest.type, all);
      assert.match(applied(NETWORK, edit?.changes?.[network] ?? []), /192\.168\.20\.32/);
      const accept = found.find(({ title }) => title.startsWith('Accept '));
      assert.match(JSON.stringify(accept?.edit?.documentChanges), /because: \$\{1:say why\}/);
    });

    it('in all files of the site what is written as auto, on command', async () => {
      await start({ capabilities: ABLE });
      const changed = new Promise<WorkspaceEdit>((resolve) => {
        client.connection.onRequest(ApplyWorkspaceEditRequest.type, ({ edit }) => {
          resolve(edit);
          return { applied: true };
        });
      });
      const [one, other] = [
        NETWORK.replace('address: 192.168.20.5', 'address: auto'),
        STREAMS.replace('port: 5004', 'group: auto, port: auto'),
      ];
      await client.change(network, one);
      await client.change(streams, other);
      await client.connection.sendRequest(ExecuteCommandRequest.type, {
        command: 'plumbline.fillInSite',
        arguments: [network],
      });
      const { changes = {} } = await changed;
      assert.equal(applied(one, changes[network] ?? []), NETWORK);
      assert.equal(
        applied(other, changes[streams] ?? []),
        STREAMS.replace('port: 5004', 'group: 239.192.0.1, port: 5004'),
      );
    });

    it('what it can of what is written as auto, and says what is left and why', async () => {
      const told: ShowMessageParams[] = [];
      await start({
        capabilities: ABLE,
        answers: (connection) => {
          connection.onRequest(ApplyWorkspaceEditRequest.type, () => ({ applied: true }));
          connection.onNotification(ShowMessageNotification.type, (params) => {
            told.push(params);
          });
        },
      });
      const text = NETWORK.replace('address: 192.168.20.5', 'address: auto')
        .replace('cables:', '  den: {kind: display, address: auto}\ncables:')
        .replace('vlans:', 'vlans:\n  house: {id: 10, subnet: 192.168.10.0/24}');
      await client.change(network, text);
      const command = 'plumbline.fillInSite';
      const answer: FillAnswer | null = await client.connection.sendRequest(ExecuteCommandRequest.type, {
        command,
        arguments: [network],
      });
      assert.ok(answer !== null);
      assert.match(answer.summary, /^Filled in 1 address\. 1 address is left as ‘auto’\.$/);
      assert.deepEqual(
        [...answer.filled, ...answer.left].map(({ words }) => words),
        [
          'recorder: address 192.168.20.5 in video',
          'den: no address, because its VLAN is not known; cable it, or write the address yourself',
        ],
      );
      const place = answer.left[0]?.at.range.start;
      assert.equal(text.split('\n')[place?.line ?? 0]?.slice(place?.character).split('}')[0], 'auto');
      assert.equal(told.length, 1);
      assert.equal(told[0]?.type, MessageType.Warning);
      assert.match(told[0].message, /den: no address, because/);
    });

    it('nothing of another kind than is asked for', async () => {
      await start();
      assert.deepEqual(await actions(['refactor'], whole), []);
      assert.ok(
        (await actions(['quickfix'], { start: { line: 8, character: 0 }, end: { line: 9, character: 99 } })).every(
          ({ kind }) => kind === 'quickfix',
        ),
      );
    });
  });
});
