// A folder that is on no disk that the server can reach: the client lists and reads its files, as ours does for
// virtual workspaces, or knows of no such requests.
import assert from 'node:assert/strict';
import type { Diagnostic } from 'vscode-languageserver-protocol/node';
import { Client } from './client.ts';

const folder = 'vscode-vfs://example/home';
const [first, second] = [`${folder}/cameras.site.yaml`, `${folder}/more.site.yaml`];
const files: Readonly<Record<string, string>> = {
  [first]: 'devices:\n  gate-cam: {kind: camera, address: 192.168.20.31}\n',
  [second]: 'devices:\n  yard-cam: {kind: camera, address: 192.168.20.31}\n',
};

describe('a site in a virtual folder', () => {
  let client: Client;

  beforeEach(async () => {
    client = await Client.startHere();
  });
  afterEach(() => client.stop());

  const open = (uri: string): Promise<void> => client.openUri(uri, files[uri] ?? '');
  const clashes = (found: readonly Diagnostic[]): readonly Diagnostic[] =>
    found.filter(({ code }) => code === 'duplicate-address');

  it('takes the files that are not open from the client', async () => {
    client.connection.onRequest('plumbline/listFiles', (asked: { folder: string }) => {
      assert.equal(asked.folder, folder);
      return Object.keys(files);
    });
    client.connection.onRequest('plumbline/readFile', ({ uri }: { uri: string }) => ({ text: files[uri] ?? '' }));
    await open(first);
    const [clash] = await client.diagnostics(first, (found) => clashes(found).length > 0);
    assert.equal(clash?.relatedInformation?.[0]?.location.uri, second);
  });

  it('is found in a workspace without an open file', async () => {
    await client.stop();
    const top = 'vscode-vfs://example';
    client = await Client.startHere({
      workspaceUris: [`${top}/`],
      answers: (connection) => {
        connection.onRequest('plumbline/listFiles', (asked: { folder: string }) =>
          asked.folder === folder ? Object.keys(files) : [],
        );
        connection.onRequest('plumbline/listFolders', (asked: { folder: string }) =>
          asked.folder === top ? [folder] : [],
        );
        connection.onRequest('plumbline/readFile', ({ uri }: { uri: string }) => ({ text: files[uri] ?? '' }));
      },
    });
    await client.becomes(second, (found) => clashes(found).length > 0);
  });

  it('says why one of them cannot be read', async () => {
    client.connection.onRequest('plumbline/listFiles', () => Object.keys(files));
    client.connection.onRequest('plumbline/readFile', () => ({ unreadable: 'permission is denied' }));
    await open(first);
    const [unreadable] = await client.diagnostics(second, (found) => found.length > 0);
    assert.match(JSON.stringify(unreadable?.message), /permission is denied/);
  });

  it('says so where the client fails to read one of them', async () => {
    client.connection.onRequest('plumbline/listFiles', () => Object.keys(files));
    client.connection.onRequest('plumbline/readFile', () => {
      throw new Error('the network is gone');
    });
    await open(first);
    const [unreadable] = await client.diagnostics(second, (found) => found.length > 0);
    assert.match(JSON.stringify(unreadable?.message), /the network is gone/);
  });

  it('is what is open where the client answers something else', async () => {
    for (const answer of ['none', { length: 2 }, [1, null]]) {
      client.connection.onRequest('plumbline/listFiles', () => answer);
      await client.openUri(first, 'devices:\n  gate-cam: {kind: camera, adress: 192.168.20.31}\n');
      await client.diagnostics(first, (found) => found.some(({ code }) => code === 'unknown-key'));
      await client.close(first);
      await client.becomes(first, (found) => found.length === 0);
    }
    client.connection.onRequest('plumbline/listFiles', () => Object.keys(files));
    client.connection.onRequest('plumbline/readFile', () => ({ text: 5 }));
    await open(first);
    const [unreadable] = await client.diagnostics(second, (found) => found.length > 0);
    assert.match(JSON.stringify(unreadable?.message), /gives no text/);
  });

  it('is what is open where the client knows of no such requests, or cannot list it', async () => {
    await open(first);
    assert.deepEqual(clashes(await client.diagnostics(first)), []);
    client.connection.onRequest('plumbline/listFiles', () => {
      throw new Error('the network is gone');
    });
    await open(second);
    // The first file is open still.
    await client.diagnostics(second, (found) => clashes(found).length === 1);
  });
});
