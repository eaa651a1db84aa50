// A client that makes mistakes: it gets the protocol's errors (LSP 3.17, Base Protocol and Server lifecycle;
// JSON-RPC 2.0, 5.1), and is served further.
import assert from 'node:assert/strict';
import { fork, spawn } from 'node:child_process';
import { type Message, StreamMessageReader } from 'vscode-languageserver-protocol/node';
import { type Host, SERVER, inThisProcess, spawned } from './host.ts';

/** JSON-RPC 2.0, 5.1; ServerNotInitialized: LSP 3.17, ErrorCodes. */
const [PARSE_ERROR, INVALID_REQUEST, NOT_INITIALIZED, INVALID_PARAMS] = [-32700, -32600, -32002, -32602];

interface Answer {
  readonly id?: number | null;
  readonly method?: string;
  readonly result?: unknown;
  readonly error?: { readonly code: number };
  readonly params?: { readonly uri?: string; readonly diagnostics?: readonly { readonly code: string }[] };
}

/** Writes bytes unchanged, and keeps the answers. */
class Raw {
  readonly host: Host;
  readonly answers: Answer[] = [];
  private hasEnded = false;
  private wake: () => void = () => undefined;

  constructor(host: Host) {
    this.host = host;
    new StreamMessageReader(host.output).listen((message: Message) => {
      this.answers.push(message as Answer);
      this.wake();
    });
    host.input.on('error', () => undefined);
    void host.ended.then(() => (this.hasEnded = true));
  }

  write(bytes: string | Buffer): void {
    this.host.input.write(bytes);
  }

  send(message: unknown): void {
    this.write(framed(JSON.stringify(message)));
  }

  request(id: number, method: string, params?: unknown): Promise<Answer> {
    this.send({ jsonrpc: '2.0', id, method, ...(params === undefined ? {} : { params }) });
    return this.answer((answer) => answer.id === id && answer.method === undefined);
  }

  notify(method: string, params?: unknown): void {
    this.send({ jsonrpc: '2.0', method, ...(params === undefined ? {} : { params }) });
  }

  /** Takes the first answer that is wanted. */
  async answer(isWanted: (answer: Answer) => boolean): Promise<Answer> {
    const until = Date.now() + 120_000;
    for (;;) {
      const at = this.answers.findIndex(isWanted);
      const [found] = at === -1 ? [] : this.answers.splice(at, 1);
      if (found !== undefined) return found;
      if (Date.now() > until || this.hasEnded) {
        const when = this.hasEnded ? 'before it ended' : 'yet';
        throw new Error(`no such answer ${when} among ${JSON.stringify(this.answers)}`);
      }
      await new Promise<void>((resolve) => {
        const timer = setTimeout(resolve, 100);
        this.wake = () => {
          clearTimeout(timer);
          resolve();
        };
      });
    }
  }
}

const framed = (text: string): string => `Content-Length: ${Buffer.byteLength(text)}\r\n\r\n${text}`;
const INITIALIZE = { processId: null, rootUri: null, capabilities: {} };
const URI = 'file:///nowhere/harrow-lane/network.site.yaml';
const TEXT = 'devices:\n  paddock-cam: {kind: camera, adress: 192.168.20.31}\n';
const HOVER = { textDocument: { uri: URI }, position: { line: 1, character: 4 } };

describe('the server, of a client that errs', () => {
  let client: Raw;
  beforeEach(async () => (client = new Raw(await inThisProcess())));

  const initialized = async (): Promise<void> => {
    assert.ok('result' in (await client.request(1, 'initialize', INITIALIZE)));
    client.notify('initialized', {});
  };
  /** The server publishes findings, answers, and ends in good order. */
  const serves = async (): Promise<void> => {
    client.notify('textDocument/didOpen', { textDocument: { uri: URI, languageId: 'yaml', version: 1, text: TEXT } });
    const told = await client.answer(
      ({ method, params }) => method === 'textDocument/publishDiagnostics' && params?.uri === URI,
    );
    assert.deepEqual(
      told.params?.diagnostics?.map(({ code }) => code),
      ['unknown-key'],
    );
    assert.ok('result' in (await client.request(90, 'textDocument/hover', HOVER)));
    assert.ok('result' in (await client.request(91, 'shutdown')));
    client.notify('exit');
    assert.equal(await client.host.ended, 0);
  };

  const good = framed(JSON.stringify({ jsonrpc: '2.0', id: 50, method: 'plumbline/absent' }));
  for (const [what, bytes] of Object.entries({
    'text before a header': 'hello\r\n\r\n',
    'a header without a length': 'Content-Type: application/json\r\n\r\n',
    'a header that says no number': 'Content-Length: many\r\n\r\n{"jsonrpc":"2.0","method":"x"}',
    'a header that says a negative number': 'Content-Length: -5\r\n\r\n{"jsonrpc":"2.0","method":"x"}',
    'a header that says a number and more': 'Content-Length: 5x\r\n\r\n{"jsonrpc":"2.0","method":"x"}',
    'a header without a colon': 'Content-Length 5\r\n\r\nhello',
    'a header of line feeds alone': 'Content-Length: 5\n\nhello',
    'a header that never ends': 'x'.repeat(100_000),
    'a length of many gigabytes': 'Content-Length: 99999999999\r\n\r\n{}',
    'a length of more digits than a number has': `Content-Length: ${'9'.repeat(400)}\r\n\r\n{}`,
    'a message that is shorter than its header says': 'Content-Length: 5000\r\n\r\n{"jsonrpc":"2.0","method":"x"}',
    'a message that is longer than its header says': 'Content-Length: 10\r\n\r\n{"jsonrpc":"2.0","method":"x"}',
    'no JSON': framed('{"jsonrpc": "2.0", '),
    'nothing': 'Content-Length: 0\r\n\r\n',
    'bytes that are no text': 'Content-Length: 3\r\n\r\n\u0000\u0001\u0002',
  })) {
    it(`${what}: says so once, and hears the next`, async () => {
      await initialized();
      client.write(bytes + good);
      assert.equal((await client.answer(({ id }) => id === null)).error?.code, PARSE_ERROR);
      await client.answer(({ id }) => id === 50);
      assert.ok(!client.answers.some(({ id }) => id === null));
      await serves();
    });
  }

  it('a message that comes in byte by byte, others before and after it', async () => {
    for (const byte of framed(JSON.stringify({ jsonrpc: '2.0', id: 1, method: 'initialize', params: INITIALIZE })))
      client.write(byte);
    await client.answer(({ id }) => id === 1);
    const name = 'Pferd 🐎 und Stall\\r\\nContent-Length: 5\\r\\n\\r\\n';
    const text = JSON.stringify({ jsonrpc: '2.0', id: 2, method: 'plumbline/absent', params: { name } });
    const bytes = Buffer.from(good + framed(text) + good.replace('50', '51'));
    for (let at = 0; at < bytes.length; at += 3) client.write(bytes.subarray(at, at + 3));
    for (const wanted of [50, 2, 51]) await client.answer(({ id }) => id === wanted);
    await serves();
  });

  for (const [what, message, id] of [
    ['a list', [{ jsonrpc: '2.0', id: 7, method: 'shutdown' }], null],
    ['a number', 5, null],
    ['nothing', null, null],
    ['neither a request nor an answer', { jsonrpc: '2.0' }, null],
    ['a method that is no text', { jsonrpc: '2.0', id: 7, method: 5 }, 7],
    ['an id that is an object', { jsonrpc: '2.0', id: {}, method: 'shutdown' }, null],
    ['parameters that are a number', { jsonrpc: '2.0', id: 7, method: 'textDocument/hover', params: 5 }, 7],
  ] as const)
    it(`JSON that is no message, ${what}, is refused`, async () => {
      await initialized();
      client.send(message);
      assert.equal((await client.answer((answer) => answer.id === id)).error?.code, INVALID_REQUEST);
      await serves();
    });

  it('a second initialize is refused, and changes nothing', async () => {
    await initialized();
    const again = await client.request(2, 'initialize', {
      ...INITIALIZE,
      initializationOptions: { schemaFeatures: 'off' },
    });
    assert.equal(again.error?.code, INVALID_REQUEST);
    await serves();
  });

  it('an initialize that does not say what the client can do is refused, and the next one taken', async () => {
    for (const params of [undefined, {}, { capabilities: 5 }, []])
      assert.equal((await client.request(3, 'initialize', params)).error?.code, INVALID_PARAMS);
    await initialized();
    await serves();
  });

  it('requests before initialize are refused, and notifications passed over', async () => {
    assert.equal((await client.request(2, 'textDocument/hover', HOVER)).error?.code, NOT_INITIALIZED);
    assert.equal((await client.request(3, 'shutdown')).error?.code, NOT_INITIALIZED);
    client.notify('textDocument/didOpen', { textDocument: { uri: URI, languageId: 'yaml', version: 1, text: '' } });
    await initialized();
    await serves();
  });

  it('after shutdown only exit is taken', async () => {
    await initialized();
    await client.request(2, 'shutdown');
    assert.equal((await client.request(3, 'textDocument/hover', HOVER)).error?.code, INVALID_REQUEST);
    assert.equal((await client.request(4, 'initialize', INITIALIZE)).error?.code, INVALID_REQUEST);
    client.notify('exit');
    assert.equal(await client.host.ended, 0);
  });

  it('exit without shutdown, and an end of the input, end its process with 1; after shutdown with 0', async () => {
    for (const [isAsked, ends] of [
      [false, () => client.notify('exit')],
      [true, () => client.notify('exit')],
      [false, () => client.host.input.end()],
      [true, () => client.host.input.end()],
    ] as const) {
      client = new Raw(spawned());
      await initialized();
      if (isAsked) await client.request(2, 'shutdown');
      ends();
      assert.equal(await client.host.ended, isAsked ? 0 : 1);
    }
    client = new Raw(spawned());
    client.notify('exit');
    assert.equal(await client.host.ended, 1, 'before initialize too');
  });

  it('a client that reads no more, or leaves the channel of a child process, ends it with 1 and no word', async () => {
    const deaf = spawn(process.execPath, SERVER.slice(1), { stdio: 'pipe' });
    const child = fork(SERVER[1], ['--node-ipc'], { stdio: ['ignore', 'pipe', 'pipe', 'ipc'] });
    const said: string[] = [];
    for (const stream of [deaf.stderr, child.stderr, child.stdout])
      stream?.setEncoding('utf8').on('data', (text: string) => said.push(text));
    const ends = [deaf, child].map((one) => new Promise((end) => one.once('exit', end)));
    deaf.stdin.on('error', () => undefined);
    const initialize = { jsonrpc: '2.0', id: 1, method: 'initialize', params: INITIALIZE };
    deaf.stdin.write(framed(JSON.stringify(initialize)));
    deaf.stdout.once('data', () => {
      deaf.stdout.destroy();
      // Each is answered, which only then shows that nobody reads.
      const ask = JSON.stringify({ jsonrpc: '2.0', id: 2, method: 'plumbline/absent' });
      const asking = setInterval(() => deaf.stdin.write(framed(ask)), 50);
      deaf.once('exit', () => clearInterval(asking));
    });
    child.once('message', () => child.disconnect());
    child.send(initialize);
    assert.deepEqual(await Promise.all(ends), [1, 1]);
    assert.deepEqual(said, []);
  });

  it('an address that is none: its request is refused, and a folder of the workspace is left out', async () => {
    const half = 'file:///nowhere/\ud800';
    const workspaceFolders = ['file:////', half, 'a b://c', '::://%'].map((uri) => ({ uri, name: uri }));
    assert.ok('result' in (await client.request(1, 'initialize', { ...INITIALIZE, workspaceFolders })));
    client.notify('initialized', {});
    client.notify('workspace/didChangeWorkspaceFolders', {
      event: { added: workspaceFolders, removed: workspaceFolders },
    });
    for (const [id, folder] of ['file:////', half, 'a b://c'].entries())
      assert.equal(
        (await client.request(100 + id, 'plumbline/page', { folder, page: 'report' })).error?.code,
        INVALID_PARAMS,
        folder,
      );
    await serves();
  });

  it('a % in an address that encodes nothing: the report of its site names the file', async () => {
    await initialized();
    for (const [id, name] of ['a%ZZ.site.yaml', '%E0%A4%A.site.yaml', '100%.site.yaml'].entries()) {
      const uri = `file:///nowhere/${id}/${name}`;
      client.notify('textDocument/didOpen', { textDocument: { uri, languageId: 'yaml', version: 1, text: TEXT } });
      const { result } = await client.request(100 + id, 'plumbline/page', {
        folder: `file:///nowhere/${id}`,
        page: 'report',
      });
      assert.ok(JSON.stringify(result).includes(`${name}:2`), name);
    }
    await serves();
  });

  const document = { uri: URI.replace('network', 'other'), languageId: 'yaml', version: 1, text: TEXT };
  const { uri, version } = document;
  const range = { start: { line: 0, character: 0 }, end: { line: 0, character: 1 } };
  const MALFORMED: readonly (readonly [string, readonly unknown[]])[] = [
    [
      'textDocument/didOpen',
      [
        undefined,
        {},
        [],
        [document],
        { textDocument: null },
        { textDocument: URI },
        ...Object.keys(document).flatMap((key) => [
          { textDocument: { ...document, [key]: undefined } },
          { textDocument: { ...document, [key]: null } },
          { textDocument: { ...document, [key]: { a: 1 } } },
          { textDocument: { ...document, [key]: key === 'version' ? 'one' : 1 } },
        ]),
        { textDocument: { ...document, uri: '::://a b\u0000%' } },
      ],
    ],
    [
      'textDocument/didChange',
      [
        undefined,
        {},
        { textDocument: { uri, version } },
        { textDocument: { uri, version }, contentChanges: 'all' },
        { textDocument: { uri, version }, contentChanges: [null, 5] },
        { textDocument: { uri, version }, contentChanges: [{}] },
        { textDocument: { uri, version }, contentChanges: [{ text: 5 }] },
        { textDocument: { uri, version }, contentChanges: [{ text: '', range: {} }] },
        { textDocument: { uri, version }, contentChanges: [{ text: '', range: { ...range, end: null } }] },
        { textDocument: { uri: 5, version }, contentChanges: [{ text: '' }] },
        { textDocument: { uri }, contentChanges: [{ text: '' }] },
      ],
    ],
    [
      'textDocument/didClose',
      [undefined, {}, { textDocument: {} }, { textDocument: { uri: 5 } }, { textDocument: { uri: '::://%' } }],
    ],
    ['textDocument/didSave', [undefined, {}, { textDocument: 5 }]],
    [
      'workspace/didChangeWatchedFiles',
      [
        undefined,
        {},
        { changes: 5 },
        { changes: [null] },
        { changes: [{ uri: 5, type: 1 }] },
        { changes: [{ uri, type: 'new' }] },
      ],
    ],
    [
      'workspace/didChangeConfiguration',
      [undefined, {}, { settings: null }, { settings: 5 }, { settings: { plumbline: [] } }],
    ],
    ['workspace/didDeleteFiles', [undefined, {}, { files: [5] }, { files: [{}] }]],
    ['workspace/didRenameFiles', [undefined, {}, { files: [5] }, { files: [{}] }]],
    ['$/cancelRequest', [undefined, {}, { id: {} }, { id: 12_345 }]],
    ['$/setTrace', [undefined, {}, { value: 5 }]],
    ['$/progress', [undefined, {}, { token: 5, value: 5 }]],
    ['window/workDoneProgress/cancel', [undefined, {}, { token: {} }]],
    ['initialized', [undefined, 5, []]],
    ['plumbline/absent', [undefined, {}]],
  ];
  for (const [method, all] of MALFORMED)
    it(`a malformed ${method} is passed over`, async () => {
      await initialized();
      client.notify('textDocument/didOpen', { textDocument: { ...document, text: 'devices:\n' } });
      for (const params of all) client.notify(method, params);
      // Checks are delayed a little.
      await client.request(60, 'plumbline/absent', {});
      await new Promise((then) => setTimeout(then, 50));
      await serves();
    });

  it('a malformed request of our own is refused as one (JSON-RPC 2.0 §5.1: -32602)', async () => {
    const { result } = await client.request(1, 'initialize', INITIALIZE);
    assert.ok(result);
    client.notify('initialized', {});
    let id = 100;
    for (const name of [
      'outputs',
      'make',
      'page',
      'drawings',
      'placeOfName',
      'hoverOfName',
      'audit',
      'clearAudits',
      'fillIn',
    ])
      for (const params of [undefined, [], {}, { folder: 5, uri: {} }, { folder: null, kind: null, page: [] }]) {
        const { error } = await client.request(id++, `plumbline/${name}`, params);
        assert.equal(error?.code, -32602, `${name} ${JSON.stringify(params)}`);
      }
    const folder = new URL('.', uri).href.slice(0, -1);
    const drawing = { kind: 'network', subject: '', rate: '__proto__' };
    const { error } = await client.request(id, 'plumbline/page', { folder, page: 'drawing', drawing });
    assert.equal(error?.code, -32602);
    await serves();
  });

  it('a position that is none is refused as one, and one past the text is at its end', async () => {
    await initialized();
    client.notify('textDocument/didOpen', { textDocument: { uri: URI, languageId: 'yaml', version: 1, text: TEXT } });
    let id = 100;
    const asked = (method: string, position: unknown): Promise<Answer> =>
      client.request(id++, `textDocument/${method}`, { textDocument: { uri: URI }, position });
    // LSP 3.17, Position: both are unsigned integers.
    for (const position of [null, undefined, {}, [1, 2], { line: -1, character: 0 }, { line: 0, character: -7 }])
      for (const method of ['hover', 'completion', 'definition'])
        assert.equal((await asked(method, position)).error?.code, INVALID_PARAMS, JSON.stringify(position));
    for (const position of [
      { line: 2_147_483_647, character: 0 },
      { line: 1, character: 2_147_483_647 },
    ])
      assert.ok('result' in (await asked('hover', position)));
    client.notify('textDocument/didClose', { textDocument: { uri: URI } });
    await serves();
  });

  it('a malformed request of any kind is refused as one', async () => {
    await initialized();
    client.notify('textDocument/didOpen', { textDocument: document });
    const place = { textDocument: { uri }, position: { line: 1, character: 4 } };
    const part = { textDocument: { uri }, range };
    const RIGHT: Readonly<Record<string, Readonly<Record<string, unknown>>>> = {
      ...Object.fromEntries(
        ['hover', 'completion', 'definition', 'documentHighlight', 'prepareRename'].map((name) => [name, place]),
      ),
      'references': { ...place, context: { includeDeclaration: true } },
      'rename': { ...place, newName: 'stable-cam' },
      ...Object.fromEntries(
        ['documentSymbol', 'foldingRange', 'documentLink', 'codeLens', 'semanticTokens/full'].map((name) => [
          name,
          { textDocument: { uri } },
        ]),
      ),
      'inlayHint': part,
      'semanticTokens/range': part,
      'codeAction': { ...part, context: { diagnostics: [] } },
      'selectionRange': { textDocument: { uri }, positions: [place.position] },
      'workspace/symbol': { query: '' },
      'workspace/executeCommand': { command: 'plumbline.fillInSite' },
      'codeAction/resolve': { title: 'Fix' },
      'codeLens/resolve': { range },
    };
    let id = 100;
    for (const [name, right] of Object.entries(RIGHT)) {
      const method = /^(workspace|codeAction\/|codeLens\/)/.test(name) ? name : `textDocument/${name}`;
      const code = async (params: unknown): Promise<number | undefined> =>
        (await client.request(id++, method, params)).error?.code;
      assert.ok(![INVALID_PARAMS, -32603].includes((await code(right)) ?? 0), name);
      for (const key of Object.keys(right))
        for (const value of [undefined, null, 5, [5], ...(typeof right[key] === 'object' ? [{}] : [])])
          if (key !== 'context' || !(value instanceof Object))
            assert.equal(await code({ ...right, [key]: value }), INVALID_PARAMS, `${name} ${key} ${String(value)}`);
      for (const params of [undefined, null, [], {}]) assert.equal(await code(params), INVALID_PARAMS, name);
    }
    for (const params of [
      { title: 'Fix', data: 5 },
      { title: 'Fix', data: null },
      { title: 'Fix', data: { uri: 5 } },
    ])
      assert.equal((await client.request(id++, 'codeAction/resolve', params)).error?.code, INVALID_PARAMS);
    await serves();
  });
});
