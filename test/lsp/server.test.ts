import assert from 'node:assert/strict';
import { chmodSync, mkdirSync, mkdtempSync, rmSync, unlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Client, FileChangeType, applied, positionOf } from './client.ts';
import { SERVER } from './host.ts';

const SITE = `
vlans:
  video: {id: 20, subnet: 192.168.20.0/24}
devices:
  core:
    kind: switch
    igmp-snooping: true
    ports:
      1-4: {speed: 1 Gb/s, vlan: video}
  paddock-cam: {kind: camera, address: 192.168.20.31, speed: 100 Mb/s}
  gate-cam: {kind: camera, address: 192.168.20.31, speed: 100 Mb/s}   # moved here in spring
  recorder: {kind: server, address: 192.168.20.5, speed: 1 Gb/s}
cables:
  - {from: core/1, to: paddock-cam}
  - {from: core/2, to: gate-cam}
  - {from: core/3, to: recorder}
`;

const STREAMS = `
streams:
  paddock: {source: paddock-cam, transport: rtp, port: 5004, video: {codec: h264, bitrate: 6 Mb/s}, receivers: [recorder]}
`;

const SERVERS = {
  'the server': SERVER,
  'plumbline lsp': [process.execPath, 'dist/plumbline.cjs', 'lsp', '--stdio'],
};

for (const [name, command] of Object.entries(SERVERS)) {
  describe(`${name}, over standard input and output`, () => {
    let folder: string;
    let client: Client;

    before(async () => {
      client = await Client.start(command);
    });
    after(async () => {
      assert.equal(await client.stop(), 0);
    });
    beforeEach(() => {
      folder = mkdtempSync(join(tmpdir(), 'plumbline-lsp-'));
    });
    afterEach(() => rmSync(folder, { recursive: true }));

    const has = (rule: string) => (found: readonly { code?: number | string }[]) =>
      found.some(({ code }) => code === rule);
    const lacks = (rule: string) => (found: readonly { code?: number | string }[]) => !has(rule)(found);

    it('reports a clash with the rule, the version and the other place, and mends it', async () => {
      const uri = await client.open(join(folder, 'network.site.yaml'), SITE);
      const clash = (await client.diagnostics(uri, has('duplicate-address'))).find(
        ({ code }) => code === 'duplicate-address',
      );
      assert.ok(clash !== undefined);
      assert.equal(clash.source, 'plumbline');
      assert.match(String(clash.message), /192\.168\.20\.31/);
      assert.equal(clash.relatedInformation?.[0]?.location.uri, uri);

      const [fix] = await client.codeActions(uri, clash);
      const edits = fix?.edit?.changes?.[uri] ?? [];
      const mended = applied(SITE, edits);
      assert.notEqual(mended, SITE);
      assert.match(mended, /# moved here in spring/);
      await client.change(uri, mended);
      await client.diagnostics(uri, lacks('duplicate-address'));
    });

    it('takes changes by range, in characters beyond the first plane too', async () => {
      const text = SITE.replace('# moved here in spring', '# 🐎🐎 moved');
      const uri = await client.open(join(folder, 'network.site.yaml'), text);
      await client.diagnostics(uri, has('duplicate-address'));
      const line = text.split('\n').findIndex((candidate) => candidate.includes('gate-cam: '));
      const start = text.split('\n')[line]?.indexOf('.31') ?? 0;
      await client.change(uri, '.32', { start: { line, character: start }, end: { line, character: start + 3 } });
      await client.diagnostics(uri, lacks('duplicate-address'));
      const after = text.split('\n')[line]?.indexOf(' moved') ?? 0;
      await client.change(uri, ' again', { start: { line, character: after }, end: { line, character: after } });
      await client.diagnostics(uri, lacks('duplicate-address'));
    });

    it('takes the files of the folder that are not open from the disk, and follows what happens to them there', async () => {
      const network = join(folder, 'network.site.yaml');
      writeFileSync(network, SITE);
      const uri = await client.open(join(folder, 'streams.site.yaml'), STREAMS);
      await client.diagnostics(uri, lacks('unknown-name'));
      writeFileSync(network, SITE.replaceAll('paddock-cam', 'field-cam'));
      await client.changedOnDisk(network);
      await client.diagnostics(uri, has('unknown-name'));
      writeFileSync(network, SITE);
      await client.changedOnDisk(network);
      await client.diagnostics(uri, lacks('unknown-name'));
      unlinkSync(network);
      await client.changedOnDisk(network, FileChangeType.Deleted);
      await client.diagnostics(uri, has('unknown-name'));
    });

    it('leaves other folders alone', async () => {
      mkdirSync(join(folder, 'elsewhere'));
      writeFileSync(join(folder, 'elsewhere', 'network.site.yaml'), SITE);
      const uri = await client.open(join(folder, 'streams.site.yaml'), STREAMS);
      await client.diagnostics(uri, has('unknown-name'));
    });

    it('hovers with the sum', async () => {
      const uri = await client.open(join(folder, 'site.site.yaml'), SITE + STREAMS);
      const text = await client.hover(uri, positionOf(SITE + STREAMS, '  pad|dock: {source'));
      // 6 Mb/s in packets of 1400 B, and half a packet more for each of 25 pictures: 548.2 packets/s with 78 B each
      // on the line (IEEE 802.3 as in RFC 5180 App. A.1).
      assert.match(text ?? '', /6\.34|6,342,086/);
    });

    it('of a burst of edits tells the last', async () => {
      const uri = await client.open(join(folder, 'network.site.yaml'), SITE);
      for (let last = 32; last < 60; last++)
        await client.change(uri, SITE.replace('.31, speed: 100 Mb/s}   #', `.${last}, speed: 100 Mb/s}   #`));
      await client.diagnostics(uri, lacks('duplicate-address'));
    });

    it('goes on behind a half-typed item', async () => {
      const uri = await client.open(
        join(folder, 'network.site.yaml'),
        SITE.replace('cables:\n', 'cables:\n  - {from: core/4, to: \n'),
      );
      await client.diagnostics(uri, has('duplicate-address'));
    });

    it('reports a file that it cannot read', async function () {
      if (process.getuid?.() === 0) writeFileSync(join(folder, 'odd.site.yaml'), Buffer.from([0xff, 0xfe, 0x00]));
      else {
        writeFileSync(join(folder, 'odd.site.yaml'), SITE);
        chmodSync(join(folder, 'odd.site.yaml'), 0);
      }
      const uri = await client.open(join(folder, 'network.site.yaml'), SITE);
      await client.diagnostics(uri);
      await client.diagnostics(uri.replace('network', 'odd'), has('unreadable-file'));
    });

    it('clears what it published when the last file is closed', async () => {
      const uri = await client.open(join(folder, 'network.site.yaml'), SITE);
      await client.diagnostics(uri, has('duplicate-address'));
      await client.close(uri);
      await client.diagnostics(uri, (found) => found.length === 0);
    });
  });
}
