// Sites of the workspace without an open file: their findings are shown, and follow the disk.
import assert from 'node:assert/strict';
import { mkdirSync, mkdtempSync, renameSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { pathToFileURL } from 'node:url';
import {
  type Diagnostic,
  DidChangeWorkspaceFoldersNotification,
  DidRenameFilesNotification,
} from 'vscode-languageserver-protocol/node';
import { Client, FileChangeType, workspaceFolder } from './client.ts';

const CAMERA = 'devices:\n  paddock-cam: {kind: camera, adress: 192.168.20.31}\n';

const isWrong = (found: readonly Diagnostic[]): boolean => found.some(({ code }) => code === 'unknown-key');
const isNothing = (found: readonly Diagnostic[]): boolean => found.length === 0;

describe('sites of the workspace without an open file', () => {
  let folder: string;
  let client: Client | undefined;

  beforeEach(() => {
    folder = mkdtempSync(join(tmpdir(), 'plumbline-workspace-'));
  });

  afterEach(async () => {
    if (client !== undefined) assert.equal(await client.stop(), 0);
    client = undefined;
    rmSync(folder, { recursive: true });
  });

  const put = (name: string, text = CAMERA): string => {
    mkdirSync(dirname(join(folder, name)), { recursive: true });
    writeFileSync(join(folder, name), text);
    return uriAt(name);
  };
  const uriAt = (name: string): string => pathToFileURL(join(folder, name)).href;
  const start = async (...names: readonly string[]): Promise<Client> =>
    (client = await Client.startHere({ workspace: names.map((name) => join(folder, name)) }));

  it('are checked at the start, however deep, and those of no other folder', async () => {
    const inside = ['home/a.site.yaml', 'home/house/b.site.yaml', 'home/farm/barn/loft/c.site.yaml'].map((name) =>
      put(name),
    );
    const outside = ['other/a.site.yaml', 'home/node_modules/x/a.site.yaml', 'home/.trash/a.site.yaml'].map((name) =>
      put(name),
    );
    symlinkSync(join(folder, 'other'), join(folder, 'home/linked'));
    const server = await start('home');
    for (const uri of inside) await server.becomes(uri, isWrong);
    for (const uri of [...outside, uriAt('home/linked/a.site.yaml')]) assert.equal(server.shown(uri), undefined);
  });

  it('are those of several folders, which come and go', async () => {
    const [first, second] = [put('one/a.site.yaml'), put('two/deep/b.site.yaml')];
    const server = await start('one');
    await server.becomes(first, isWrong);
    assert.equal(server.shown(second), undefined);
    const tell = (added: readonly string[], removed: readonly string[]): Promise<void> =>
      server.connection.sendNotification(DidChangeWorkspaceFoldersNotification.type, {
        event: {
          added: added.map((name) => workspaceFolder(join(folder, name))),
          removed: removed.map((name) => workspaceFolder(join(folder, name))),
        },
      });
    await tell(['two'], []);
    await server.becomes(second, isWrong);
    await tell([], ['one']);
    await server.becomes(first, isNothing);
    assert.ok(isWrong(server.shown(second) ?? []));
  });

  it('follow files that are made, changed, renamed and deleted', async () => {
    put('home/notes.txt');
    const server = await start('home');
    const made = put('home/new/a.site.yaml');
    await server.changedOnDisk(join(folder, 'home/new/a.site.yaml'), FileChangeType.Created);
    await server.becomes(made, isWrong);
    put('home/new/a.site.yaml', CAMERA.replace('adress', 'address'));
    await server.changedOnDisk(join(folder, 'home/new/a.site.yaml'));
    await server.becomes(made, isNothing);
    put('home/new/a.site.yaml');
    renameSync(join(folder, 'home/new'), join(folder, 'home/newer'));
    await server.connection.sendNotification(DidRenameFilesNotification.type, {
      files: [{ oldUri: uriAt('home/new'), newUri: uriAt('home/newer') }],
    });
    await server.becomes(uriAt('home/newer/a.site.yaml'), isWrong);
    rmSync(join(folder, 'home/newer'), { recursive: true });
    await server.changedOnDisk(join(folder, 'home/newer'), FileChangeType.Deleted);
    await server.becomes(uriAt('home/newer/a.site.yaml'), isNothing);
  });

  it('come behind the file that is open', async () => {
    for (let i = 0; i < 40; i++) put(`home/${i}/a.site.yaml`);
    const server = await start('home');
    const open = await server.open(join(folder, 'home/39/a.site.yaml'), CAMERA);
    await server.diagnostics(open);
    const shown = Array.from({ length: 39 }, (_, i) => server.shown(uriAt(`home/${i}/a.site.yaml`)));
    assert.ok(shown.some((found) => found === undefined));
    for (let i = 0; i < 39; i++) await server.becomes(uriAt(`home/${i}/a.site.yaml`), isWrong);
  });

  it('are no more than anybody reads, and the log says so', async () => {
    for (let i = 0; i < 210; i++) put(`home/${i}/a.site.yaml`, '');
    const server = await start('home');
    const said = new Promise<string>((resolve) => {
      server.connection.onNotification('window/logMessage', ({ message }: { message: string }) => {
        if (message.includes('more than 200 sites')) resolve(message);
      });
    });
    assert.match(await said, /home/);
  });
});
