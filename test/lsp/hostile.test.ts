// Hostile folders, files and editors, from an editor's view.
import assert from 'node:assert/strict';
import { execFileSync, spawnSync } from 'node:child_process';
import {
  chmodSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  renameSync,
  rmSync,
  symlinkSync,
  unlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import MarkdownIt from 'markdown-it';
import {
  CompletionRequest,
  type Diagnostic,
  DocumentSymbolRequest,
  InlayHintRequest,
} from 'vscode-languageserver-protocol/node';
import { needs, unavailable } from '../availability.ts';
import { Client, FileChangeType } from './client.ts';
import { SERVER } from './host.ts';

const SITE = 'devices:\n  paddock-cam: {kind: camera, adress: 192.168.20.31}\n';
const STREAM = 'streams:\n  paddock: {source: paddock-cam, transport: rtp, port: 5004, receivers: [paddock-cam]}\n';

const has = (rule: string) => (found: readonly Diagnostic[]) => found.some(({ code }) => code === rule);
const lacks = (rule: string) => (found: readonly Diagnostic[]) => !has(rule)(found);

describe('the server, in spite of', () => {
  let folder: string;
  let client: Client | undefined;

  const start = async (command?: readonly string[]): Promise<Client> =>
    (client = await (command === undefined ? Client.startHere() : Client.start(command)));

  beforeEach(() => {
    folder = mkdtempSync(join(tmpdir(), 'plumbline-hostile-'));
  });

  afterEach(async () => {
    if (client !== undefined) assert.equal(await client.stop(), 0);
    client = undefined;
    rmSync(folder, { recursive: true });
  });

  const at = (name: string): string => join(folder, name);

  it('files that are none: links in a circle, out of the folder, to nothing and to what never ends; pipes and folders', async function () {
    needs(this, 'mkfifo', 'coreutils');
    const outside = mkdtempSync(join(tmpdir(), 'plumbline-outside-'));
    writeFileSync(join(outside, 'secret.site.yaml'), 'devices:\n  secret-cam: {kind: camera}\n');
    symlinkSync(join(outside, 'secret.site.yaml'), at('outside.site.yaml'));
    symlinkSync(at('b.site.yaml'), at('a.site.yaml'));
    symlinkSync(at('a.site.yaml'), at('b.site.yaml'));
    symlinkSync('/dev/zero', at('zero.site.yaml'));
    symlinkSync(at('not-there'), at('nothing.site.yaml'));
    execFileSync('mkfifo', [at('pipe.site.yaml')]);
    mkdirSync(at('folder.site.yaml'));
    writeFileSync(at('real.txt'), 'devices:\n  gate-cam: {kind: camera, adress: 192.168.20.32}\n');
    symlinkSync(at('real.txt'), at('inside.site.yaml'));

    const server = await start();
    const uri = await server.open(at('network.site.yaml'), SITE);
    await server.diagnostics(uri, has('unknown-key'));
    const reason = async (name: string): Promise<string> => {
      const found = await server.diagnostics(uri.replace('network', name), has('unreadable-file'));
      return String(found[0]?.message);
    };
    assert.match(await reason('outside'), /a link to a file outside of the folder/);
    assert.match(await reason('a'), /circle/);
    assert.match(await reason('zero'), /outside of the folder/);
    assert.match(await reason('nothing'), /it does not exist/);
    assert.match(await reason('pipe'), /no ordinary file/);
    assert.match(await reason('folder'), /it is a folder/);
    await server.diagnostics(uri.replace('network', 'inside'), has('unknown-key'));
    rmSync(outside, { recursive: true });
  });

  it('a folder that it may not read', async function () {
    const isRoot = process.getuid?.() === 0;
    if (isRoot && spawnSync('setpriv', ['--version']).error !== undefined)
      unavailable(this, 'setpriv of util-linux gives up the rights of root');
    writeFileSync(at('streams.site.yaml'), STREAM);
    chmodSync(folder, 0o311);
    // Modes do not bind root.
    const server = await start(
      isRoot ? ['setpriv', '--reuid=65534', '--regid=65534', '--clear-groups', ...SERVER] : undefined,
    );
    const uri = await server.open(at('network.site.yaml'), SITE);
    await server.diagnostics(uri, has('unknown-key'));
    chmodSync(folder, 0o755);
  });

  it('a file of fifty megabytes, on disk and in the editor, beside which typing goes on', async () => {
    writeFileSync(at('large.site.yaml'), `site:\n  name: ${'x'.repeat(50_000_000)}\n`);
    const server = await start();
    const uri = await server.open(at('network.site.yaml'), SITE);
    await server.diagnostics(uri, has('unknown-key'));
    const large = uri.replace('network', 'large');
    await server.diagnostics(large, has('unreadable-file'));
    await server.open(at('large.site.yaml'), readFileSync(at('large.site.yaml'), 'utf8'));
    const [told] = await server.diagnostics(large, has('unreadable-file'));
    assert.match(String(told?.message), /more than four million characters/);
    for (const letter of 'typing') {
      await server.change(uri, SITE.replace('adress', `a${letter}dress`));
      await server.diagnostics(uri, has('unknown-key'));
    }
  });

  it('a thousand files', async () => {
    for (let i = 0; i < 1000; i++) writeFileSync(at(`${i}.site.yaml`), `devices:\n  cam-${i}: {kind: camera}\n`);
    const server = await start();
    const uri = await server.open(at('network.site.yaml'), `${SITE}${STREAM.replaceAll('paddock-cam', 'cam-999')}`);
    await server.diagnostics(uri, (found) => has('unknown-key')(found) && lacks('unknown-name')(found));
  });

  it('a file that changes on disk while it is open: what the editor has counts until it is closed', async () => {
    writeFileSync(at('network.site.yaml'), SITE);
    const server = await start();
    const uri = await server.open(at('network.site.yaml'), SITE);
    const other = await server.open(at('streams.site.yaml'), STREAM);
    await server.diagnostics(other, lacks('unknown-name'));
    writeFileSync(at('network.site.yaml'), SITE.replace('paddock-cam', 'field-cam'));
    await server.changedOnDisk(at('network.site.yaml'));
    await server.change(other, `${STREAM}# typed\n`);
    await server.diagnostics(other, lacks('unknown-name'));
    await server.close(uri);
    await server.diagnostics(other, has('unknown-name'));
  });

  it('a file that is deleted or renamed while it is open', async () => {
    writeFileSync(at('network.site.yaml'), SITE);
    const server = await start();
    const uri = await server.open(at('network.site.yaml'), SITE);
    const other = await server.open(at('streams.site.yaml'), STREAM);
    await server.diagnostics(other, lacks('unknown-name'));
    // Deleted: reported before it is closed, as some editors do.
    unlinkSync(at('network.site.yaml'));
    await server.changedOnDisk(at('network.site.yaml'), FileChangeType.Deleted);
    await server.change(other, `${STREAM}# typed\n`);
    await server.diagnostics(other, lacks('unknown-name'));
    await server.close(uri);
    await server.diagnostics(other, has('unknown-name'));
    await server.diagnostics(uri, (found) => found.length === 0);
    // Renamed: the editor opens it under its new name.
    writeFileSync(at('network.site.yaml'), SITE);
    await server.changedOnDisk(at('network.site.yaml'), FileChangeType.Created);
    await server.diagnostics(other, lacks('unknown-name'));
    renameSync(at('network.site.yaml'), at('house.site.yaml'));
    await server.changedOnDisk(at('network.site.yaml'), FileChangeType.Deleted);
    const renamed = await server.open(at('house.site.yaml'), SITE);
    await server.diagnostics(renamed, has('unknown-key'));
    await server.diagnostics(other, lacks('unknown-name'));
    await server.diagnostics(uri, (found) => found.length === 0);
  });

  it('its folder being renamed or deleted while a file is open', async () => {
    mkdirSync(at('site'));
    writeFileSync(at('site/network.site.yaml'), SITE);
    const server = await start();
    const other = await server.open(at('site/streams.site.yaml'), STREAM);
    await server.diagnostics(other, lacks('unknown-name'));
    renameSync(at('site'), at('house'));
    await server.changedOnDisk(at('site/network.site.yaml'), FileChangeType.Deleted);
    await server.diagnostics(other, has('unknown-name'));
    await server.close(other);
    await server.diagnostics(other, (found) => found.length === 0);
    const moved = await server.open(at('house/streams.site.yaml'), STREAM);
    await server.diagnostics(moved, lacks('unknown-name'));
    rmSync(at('house'), { recursive: true });
    await server.change(moved, STREAM.replace('rtp', 'rpt'));
    await server.diagnostics(moved, has('value-not-allowed'));
  });

  it('its folder becoming a file, and a folder again', async () => {
    mkdirSync(at('site'));
    writeFileSync(at('site/network.site.yaml'), SITE);
    const server = await start();
    const uri = await server.open(at('site/streams.site.yaml'), STREAM);
    const beside = uri.replace('streams', 'network');
    await server.becomes(beside, has('unknown-key'));
    rmSync(at('site'), { recursive: true });
    writeFileSync(at('site'), SITE);
    await server.changedOnDisk(at('site/network.site.yaml'), FileChangeType.Deleted);
    await server.becomes(beside, (found) => found.length === 0);
    await server.diagnostics(uri, has('unknown-name'));
    unlinkSync(at('site'));
    mkdirSync(at('site'));
    writeFileSync(at('site/network.site.yaml'), SITE);
    await server.changedOnDisk(at('site/network.site.yaml'), FileChangeType.Created);
    await server.diagnostics(uri, lacks('unknown-name'));
  });

  it('being killed while somebody types: started anew it tells the same', async () => {
    writeFileSync(at('network.site.yaml'), SITE);
    const text = `${STREAM}recordings:\n  paddock: {stream: padock, volume: archive}\n`;
    const plain = (found: readonly Diagnostic[]): unknown =>
      found.map(({ range, code, message }) => ({ range, code, message }));
    const first = await Client.start(SERVER);
    const uri = await first.open(at('streams.site.yaml'), STREAM);
    await first.diagnostics(uri);
    await first.change(uri, text);
    // The volume may still be declared, so it is reported once nobody types.
    const both = (found: readonly Diagnostic[]): boolean =>
      found.filter(({ code }) => code === 'unknown-name').length === 2;
    const before = await first.diagnostics(uri, both);
    await first.change(uri, `${text}vol`);
    const died = new Promise((resolve) => first.process.once('exit', resolve));
    first.process.kill('SIGKILL');
    await died;
    first.connection.dispose();
    const second = await start();
    await second.open(at('streams.site.yaml'), text);
    assert.deepEqual(plain(await second.diagnostics(uri, both)), plain(before));
  });

  it('text that is meant for the editor: no hover has a link, an image, a command or HTML of it', async () => {
    const nasty = [
      '[x](command:workbench.action.quit)',
      '<img src=x onerror=alert(1)>',
      '![i](https://evil.example/i.png)',
      'https://evil.example',
      '</td><b>',
      '`${x}`',
      '$(alert)|a|b|',
      '# h',
      '&lt;b&gt;',
    ];
    const quoted = nasty.map((text) => JSON.stringify(text));
    const [name = '', html = '', image = ''] = quoted;
    const text = `
site: {name: ${html}, timezone: ${quoted[3]}}
vlans:
  ${name}: {id: 20, subnet: 192.168.20.0/24, gateway: ${html}, querier: ${image}}
devices:
  ${name}: {kind: switch, description: ${quoted[4]}, location: ${quoted[5]}, igmp-snooping: true, ports: {${html}: {speed: 1 Gb/s, vlan: ${name}, description: ${image}}, 2: {speed: 1 Gb/s, vlan: ${name}}}}
  ${html}: {kind: camera, address: 192.168.20.31, speed: 100 Mb/s, description: ${quoted[6]}}
  ${image}: {kind: server, address: 192.168.20.5, speed: 1 Gb/s, ${quoted[8]}: 1}
cables:
  - {from: ${JSON.stringify(`${nasty[0]}/${nasty[1]}`)}, to: ${html}, description: ${quoted[7]}, type: ${quoted[3]}}
  - {from: ${JSON.stringify(`${nasty[0]}/2`)}, to: ${image}}
streams:
  ${quoted[5]}: {source: ${html}, transport: rtp, group: 239.192.20.31, port: 5004, video: {codec: h264, bitrate: 6 Mb/s}, receivers: [${image}]}
volumes:
  ${quoted[6]}: {host: ${image}, capacity: 8 TB}
recordings:
  ${quoted[7]}: {stream: ${quoted[5]}, volume: ${quoted[6]}, keep: 14 d, segment: 60 s, file: ${quoted[3]}}
lint:
  rules: {${name}: off}
  accept: [{rule: link-load, at: ${html}, because: ${image}}]
`;
    const server = await start();
    const uri = await server.open(at('nasty.site.yaml'), text);
    const found = await server.diagnostics(uri);
    assert.ok(found.length > 5);
    for (const { message } of found) assert.doesNotMatch(String(message), /[\u0000-\u001f\u007f-\u009f]/);

    const parser = new MarkdownIt({ html: true, linkify: true });
    const mustBeHarmless = (markdown: string): void => {
      for (const token of parser.parse(markdown, {}).flatMap((each) => [each, ...(each.children ?? [])])) {
        assert.ok(!/^html_|^image/.test(token.type), `${token.type} ${token.content} in\n${markdown}`);
        if (token.type === 'link_open') assert.doesNotMatch(token.attrGet('href') ?? '', /evil|command|x$/, markdown);
      }
    };
    let hovers = 0;
    const lines = text.split('\n');
    for (const [line, own] of lines.entries()) {
      for (let character = 0; character < own.length; character += 3) {
        const markdown = await server.hover(uri, { line, character });
        if (markdown === undefined) continue;
        hovers++;
        mustBeHarmless(markdown);
      }
    }
    assert.ok(hovers > 200, `only ${hovers} hovers`);

    // Completions in a place of each kind, and what stands beside the text.
    const document = { uri };
    for (const word of [
      'querier: ',
      'from: ',
      'source: ',
      'receivers: [',
      'host: ',
      'stream: ',
      'volume: ',
      'kind: ',
    ]) {
      const line = lines.findIndex((own) => own.includes(word));
      const position = { line, character: (lines[line]?.indexOf(word) ?? 0) + word.length };
      const offered = await server.connection.sendRequest(CompletionRequest.type, { textDocument: document, position });
      for (const { documentation } of Array.isArray(offered) ? offered : (offered?.items ?? [])) {
        if (typeof documentation === 'object') mustBeHarmless(documentation.value);
      }
    }
    const range = { start: { line: 0, character: 0 }, end: { line: lines.length, character: 0 } };
    const hints = await server.connection.sendRequest(InlayHintRequest.type, { textDocument: document, range });
    for (const { tooltip } of hints ?? []) if (typeof tooltip === 'object') mustBeHarmless(tooltip.value);
    await server.connection.sendRequest(DocumentSymbolRequest.type, { textDocument: document });
  });

  it('whatever a site says: it opens no file outside of the folder, runs nothing and connects to nothing', async function () {
    if (spawnSync('strace', ['-V']).error !== undefined)
      unavailable(this, 'strace shows what the server asks of the system');
    const log = join(tmpdir(), `plumbline-strace-${process.pid}.log`);
    const outside = mkdtempSync(join(tmpdir(), 'plumbline-outside-'));
    writeFileSync(join(outside, 'secret.site.yaml'), SITE);
    symlinkSync(join(outside, 'secret.site.yaml'), at('link.site.yaml'));
    writeFileSync(at('notes.yaml'), SITE);
    mkdirSync(at('below'));
    writeFileSync(at('below/deep.site.yaml'), SITE);
    const text = `# yaml-language-server: $schema=${outside}/secret.json
site: {name: !!js/function "() => process.exit(1)", timezone: ../../../etc/passwd}
devices:
  paddock-cam: !include ${outside}/secret.site.yaml
  gate-cam: {kind: camera, description: "file://${outside}/secret.site.yaml", location: "$(touch ${outside}/ran)"}
recordings:
  paddock: {stream: http://127.0.0.1:9/, volume: ${outside}, file: "${outside}/%Y.mp4"}
<<: *${outside}
`;
    const server = await start([
      'strace',
      '-f',
      '-qq',
      '-s',
      '300',
      '-e',
      'trace=openat,open,execve,connect,unlink,rename,mkdir',
      '-o',
      log,
      ...SERVER,
    ]);
    const uri = await server.open(at('network.site.yaml'), text);
    await server.diagnostics(uri, (found) => found.length > 0);
    for (let line = 0; line < 8; line++)
      for (let character = 0; character < 60; character += 5) await server.hover(uri, { line, character });
    assert.equal(await server.stop(), 0);
    client = undefined;

    const calls = readFileSync(log, 'utf8').split('\n');
    const opened = calls.flatMap((call) => /open(?:at)?\([^"]*"([^"]+)"/.exec(call)?.[1] ?? []);
    assert.ok(opened.includes(folder), 'the trace shows the folder being listed');
    // The server's own program may be in the temporary folder too.
    const own = opened.filter((path) => path.startsWith(tmpdir()) && !path.startsWith(process.cwd()));
    assert.deepEqual(
      own.filter((path) => path !== folder && path !== at('network.site.yaml')),
      [],
    );
    assert.deepEqual(
      opened.filter((path) => /secret|etc\/passwd/.test(path)),
      [],
    );
    assert.deepEqual(
      calls.filter((call) => call.includes('connect(')),
      [],
    );
    assert.equal(calls.filter((call) => /execve\(.*= 0$/.test(call)).length, 1, 'the server itself');
    assert.deepEqual(
      calls.filter((call) => /(unlink|rename|mkdir)\(|O_(WRONLY|RDWR|CREAT)/.test(call) && call.includes(tmpdir())),
      [],
    );
    rmSync(outside, { recursive: true });
    unlinkSync(log);
  });
});
