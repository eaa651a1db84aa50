// No memory of a site is kept once its files are closed.
import assert from 'node:assert/strict';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { Client } from './client.ts';
import { heapOf, measuredServer } from './heap.ts';
import { hasSettled } from './settled.ts';

const CAMERAS = `devices:\n${Array.from({ length: 100 }, (_, i) => `  cam-${i}: {kind: camera, adress: 10.0.0.${i}}\n`).join('')}`;
const STREAM = 'streams:\n  paddock: {source: padock-cam, transport: rtp, port: 5004, receivers: [paddock-cam]}\n';

describe('a server of which sites outside the workspace are closed', () => {
  let folder: string;
  let client: Client;
  const at = (name: string): string => join(folder, name);

  beforeEach(async () => {
    folder = mkdtempSync(join(tmpdir(), 'plumbline-memory-'));
    for (const name of ['home', 'elsewhere']) mkdirSync(at(name));
    client = await Client.start(measuredServer(at('heap')), { workspace: [at('home')] });
  });
  afterEach(async () => {
    assert.equal(await client.stop(), 0);
    rmSync(folder, { recursive: true });
  });

  it('has no more in memory after a thousand than after ten', async () => {
    const visit = async (i: number): Promise<void> => {
      const name = `site ${i}`;
      mkdirSync(at(name));
      const files = [
        { path: at(`${name}/a.site.yaml`), text: CAMERAS },
        { path: at(`${name}/b.site.yaml`), text: STREAM },
      ];
      for (const { path, text } of files) writeFileSync(path, text);
      for (const { path, text } of files) await client.open(path, text);
      const [first = '', second = ''] = files.map(({ path }) => pathToFileURL(path).href);
      // Every other one is closed before anything was found in it.
      if (i % 2 === 0) await client.diagnostics(first);
      await Promise.all([client.close(first), client.close(second)]);
      rmSync(at(name), { recursive: true });
    };
    const settled = (): Promise<void> => hasSettled(client, folder, ['home', 'elsewhere']);
    for (let i = 0; i < 10; i++) await visit(i);
    await settled();
    const before = await heapOf(client, at('heap'));
    for (let i = 10; i < 1000; i++) await visit(i);
    await settled();
    const growth = (await heapOf(client, at('heap'))) - before;
    // Code that is compiled and optimized meanwhile takes some; a thousand of these sites take hundreds of megabytes.
    assert.ok(growth < 8_000_000, `it grows by ${growth} bytes`);
  });
});
