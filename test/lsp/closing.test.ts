// Diagnostics of a site once its files are closed: a site in the workspace is read from the disk, any other has none.
import assert from 'node:assert/strict';
import { mkdirSync, mkdtempSync, renameSync, rmSync, unlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import {
  type Diagnostic,
  DidChangeWorkspaceFoldersNotification,
  DidDeleteFilesNotification,
  DidRenameFilesNotification,
  FileChangeType,
} from 'vscode-languageserver-protocol/node';
import { Client, workspaceFolder } from './client.ts';
import { hasSettled } from './settled.ts';

const CAMERA = 'devices:\n  paddock-cam: {kind: camera, adress: 192.168.20.31}\n';
const SOUND = CAMERA.replace('adress', 'address');
const STREAM = 'streams:\n  paddock: {source: padock-cam, transport: rtp, port: 5004, receivers: [paddock-cam]}\n';

const has = (rule: string) => (found: readonly Diagnostic[]) => found.some(({ code }) => code === rule);
const lacks = (rule: string) => (found: readonly Diagnostic[]) => !has(rule)(found);
const isNothing = (found: readonly Diagnostic[]) => found.length === 0;

describe('once it is closed', () => {
  let folder: string;
  let client: Client | undefined;

  beforeEach(() => {
    folder = mkdtempSync(join(tmpdir(), 'plumbline-closing-'));
    mkdirSync(at('home'));
    mkdirSync(at('elsewhere'));
  });

  afterEach(async () => {
    if (client !== undefined) assert.equal(await client.stop(), 0);
    client = undefined;
    rmSync(folder, { recursive: true });
  });

  const at = (name: string): string => join(folder, name);
  const uriAt = (name: string): string => pathToFileURL(at(name)).href;
  const put = (name: string, text: string): string => {
    writeFileSync(at(name), text);
    return uriAt(name);
  };
  /** A server whose workspace is the folder `home`. */
  const start = async (): Promise<Client> => (client = await Client.startHere({ workspace: [at('home')] }));

  /** Waits until the server has answered what it was sent before, and has read and checked sites since. */
  const settled = (server: Client): Promise<void> => hasSettled(server, folder, ['home', 'elsewhere']);

  describe('a site outside the workspace', () => {
    it('shows nothing when all its files are closed in one burst', async () => {
      const files = ['a', 'b', 'c', 'd'].map((name) => [`elsewhere/${name}.site.yaml`, CAMERA] as const);
      const server = await start();
      const uris = files.map(([name, text]) => put(name, text));
      await Promise.all(files.map(([name, text]) => server.open(at(name), text)));
      for (const uri of uris) await server.diagnostics(uri, has('unknown-key'));
      await Promise.all(uris.map((uri) => server.close(uri)));
      await settled(server);
      for (const uri of uris) assert.deepEqual(server.shown(uri), []);
    });

    it('shows nothing when it is opened and closed at once, with files beside it or without', async () => {
      const server = await start();
      put('elsewhere/beside.site.yaml', CAMERA);
      const names = ['elsewhere/camera.site.yaml', 'elsewhere/beside.site.yaml', 'lone.site.yaml'];
      for (let round = 0; round < 5; round++) {
        for (const name of names) void server.open(at(name), CAMERA);
        for (const name of names) void server.close(uriAt(name));
      }
      await settled(server);
      for (const name of names) assert.ok(isNothing(server.shown(uriAt(name)) ?? []), name);
    });

    it('shows nothing when a file changes on disk as the last one is closed', async () => {
      const server = await start();
      const uri = put('elsewhere/camera.site.yaml', SOUND);
      const beside = put('elsewhere/stream.site.yaml', STREAM);
      await server.open(at('elsewhere/camera.site.yaml'), SOUND);
      await server.diagnostics(beside, has('unknown-name'));
      void server.changedOnDisk(at('elsewhere/stream.site.yaml'));
      await server.close(uri);
      await settled(server);
      assert.deepEqual(server.shown(beside), []);
    });
  });

  describe('a site in the workspace', () => {
    const [camera, stream] = ['home/camera.site.yaml', 'home/stream.site.yaml'];

    it('shows what the disk says, and not what an editor discards', async () => {
      const server = await start();
      const [cameraUri, streamUri] = [put(camera, CAMERA), put(stream, STREAM)];
      await server.open(at(camera), SOUND);
      await server.diagnostics(cameraUri, lacks('unknown-key'));
      await server.open(at(stream), STREAM.replace('padock', 'paddock'));
      await server.diagnostics(streamUri, lacks('unknown-name'));
      await Promise.all([cameraUri, streamUri].map((uri) => server.close(uri)));
      await settled(server);
      assert.ok(has('unknown-key')(server.shown(cameraUri) ?? []));
      assert.ok(has('unknown-name')(server.shown(streamUri) ?? []));
    });

    it('shows what the disk says when it is opened and closed at once', async () => {
      const server = await start();
      const [cameraUri, streamUri] = [put(camera, CAMERA), put(stream, STREAM)];
      for (let round = 0; round < 5; round++) {
        void server.open(at(camera), SOUND);
        void server.close(cameraUri);
      }
      await settled(server);
      assert.ok(has('unknown-key')(server.shown(cameraUri) ?? []));
      assert.ok(has('unknown-name')(server.shown(streamUri) ?? []));
    });

    it('follows the disk', async () => {
      const server = await start();
      const [cameraUri, streamUri] = [put(camera, SOUND), put(stream, STREAM)];
      await server.open(at(camera), SOUND);
      await server.diagnostics(cameraUri);
      await server.close(cameraUri);
      put(camera, CAMERA);
      await server.changedOnDisk(at(camera));
      await server.diagnostics(cameraUri, has('unknown-key'));
      unlinkSync(at(stream));
      await server.changedOnDisk(at(stream), FileChangeType.Deleted);
      await server.diagnostics(streamUri, isNothing);
      unlinkSync(at(camera));
      await server.changedOnDisk(at(camera), FileChangeType.Deleted);
      await server.diagnostics(cameraUri, isNothing);
    });

    it('shows the last of many changes, and takes a file that is there again as it is', async () => {
      const server = await start();
      const cameraUri = put(camera, SOUND);
      await server.open(at(camera), SOUND);
      await server.diagnostics(cameraUri);
      await server.close(cameraUri);
      for (let round = 0; round < 20; round++) {
        put(camera, round % 2 === 0 ? CAMERA : SOUND);
        void server.changedOnDisk(at(camera));
      }
      unlinkSync(at(camera));
      void server.changedOnDisk(at(camera), FileChangeType.Deleted);
      put(camera, CAMERA);
      void server.changedOnDisk(at(camera), FileChangeType.Created);
      // A watcher may report it late.
      void server.changedOnDisk(at(camera), FileChangeType.Deleted);
      await settled(server);
      assert.ok(has('unknown-key')(server.shown(cameraUri) ?? []));
    });

    it('reads nothing that is no site file', async () => {
      const server = await start();
      const cameraUri = put(camera, SOUND);
      await server.open(at(camera), SOUND);
      put('home/notes.yaml', CAMERA);
      await server.changedOnDisk(at('home/notes.yaml'), FileChangeType.Created);
      await settled(server);
      assert.deepEqual(server.shown(cameraUri), []);
      assert.equal(server.shown(uriAt('home/notes.yaml')), undefined);
    });

    for (const [how, tell] of [
      ['deleted', (server: Client) => server.changedOnDisk(at('home/house'), FileChangeType.Deleted)],
      [
        'deleted in the editor',
        (server: Client) =>
          server.connection.sendNotification(DidDeleteFilesNotification.type, {
            files: [{ uri: uriAt('home/house') }],
          }),
      ],
      [
        'renamed in the editor',
        (server: Client) =>
          server.connection.sendNotification(DidRenameFilesNotification.type, {
            files: [{ oldUri: uriAt('home/house'), newUri: uriAt('home/cottage') }],
          }),
      ],
    ] as const)
      it(`shows nothing when a folder above it is ${how}`, async () => {
        const server = await start();
        mkdirSync(at('home/house/outside'), { recursive: true });
        const [name, other] = ['home/house/outside/camera.site.yaml', 'home/house/outside/stream.site.yaml'];
        const [uri, beside] = [put(name, CAMERA), put(other, STREAM)];
        await server.open(at(name), CAMERA);
        await server.diagnostics(beside, has('unknown-name'));
        await server.close(uri);
        await settled(server);
        assert.ok(has('unknown-key')(server.shown(uri) ?? []));
        renameSync(at('home/house'), at('home/cottage'));
        await tell(server);
        await server.diagnostics(uri, isNothing);
        await server.diagnostics(beside, isNothing);
      });

    it('shows nothing when its folder leaves the workspace', async () => {
      const server = await start();
      const uri = put(camera, CAMERA);
      await server.open(at(camera), CAMERA);
      await server.close(uri);
      await settled(server);
      assert.ok(has('unknown-key')(server.shown(uri) ?? []));
      await server.connection.sendNotification(DidChangeWorkspaceFoldersNotification.type, {
        event: { added: [], removed: [workspaceFolder(at('home'))] },
      });
      await server.diagnostics(uri, isNothing);
    });
  });
});
