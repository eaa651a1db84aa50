// A folder that is on no disk that the server can reach: the client lists and reads its files, as ours does for
// virtual workspaces, or knows of no such requests.
import assert from 'node:assert/strict';
import type { Diagnostic } from 'vscode-languageserver-protocol/node';
import { DidOpenTextDocumentNotification, PublishDiagnosticsNotification } from 'vscode-languageserver-protocol/node';
import { Client } from './client.ts';

const folder = 'vscode-vfs://example/home';
const files: Readonly<Record<string, string>> = {
  [`${folder}/cameras.site.yaml`]: 'devices:\n  gate-cam: {kind: camera, address: 192.168.20.31}\n',
  [`${folder}/more.site.yaml`]: 'devices:\n  yard-cam: {kind: camera, address: 192.168.20.31}\n',
};

describe('a site in a virtual folder', () => {
  let client: Client;
  let told: Map<string, readonly Diagnostic[]>;

  beforeEach(async () => {
    client = await Client.start([process.execPath, 'dist/server.cjs', '--stdio']);
    told = new Map();
    client.connection.onNotification(PublishDiagnosticsNotification.type, ({ uri, diagnostics }) => {
      told.set(uri, diagnostics);
    });
  });
  afterEach(() => client.stop());

  async function open(uri: string): Promise<readonly Diagnostic[]> {
    await client.connection.sendNotification(DidOpenTextDocumentNotification.type, {
      textDocument: { uri, languageId: 'yaml', version: 1, text: files[uri] ?? '' },
    });
    for (let waited = 0; !told.has(uri) && waited < 10_000; waited += 20)
      await new Promise((resolve) => setTimeout(resolve, 20));
    return told.get(uri) ?? assert.fail('nothing was told of the file');
  }

  const clashes = (found: readonly Diagnostic[]): readonly Diagnostic[] =>
    found.filter(({ code }) => code === 'duplicate-address');
  const first = `${folder}/cameras.site.yaml`;

  it('takes the files that are not open from the client', async () => {
    client.connection.onRequest('plumbline/listFiles', (asked: { folder: string }) => {
      assert.equal(asked.folder, folder);
      return Object.keys(files);
    });
    client.connection.onRequest('plumbline/readFile', ({ uri }: { uri: string }) => ({ text: files[uri] ?? '' }));
    const [clash] = clashes(await open(first));
    assert.equal(clash?.relatedInformation?.[0]?.location.uri, `${folder}/more.site.yaml`);
  });

  it('says why one of them cannot be read', async () => {
    client.connection.onRequest('plumbline/listFiles', () => Object.keys(files));
    client.connection.onRequest('plumbline/readFile', () => ({ unreadable: 'permission is denied' }));
    await open(first);
    assert.match(String(told.get(`${folder}/more.site.yaml`)?.[0]?.message), /permission is denied/);
  });

  it('is what is open where the client knows of no such requests, or cannot list it', async () => {
    assert.deepEqual(clashes(await open(first)), []);
    client.connection.onRequest('plumbline/listFiles', () => {
      throw new Error('the network is gone');
    });
    told.clear();
    assert.deepEqual(clashes(await open(`${folder}/more.site.yaml`)).length, 1, 'the first file is open still');
  });
});
