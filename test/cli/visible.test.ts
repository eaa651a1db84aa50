// Nothing that a site or a disk says reaches the terminal as anything but text, whatever command prints it.
import assert from 'node:assert/strict';
import { spawn } from 'node:child_process';
import { mkdirSync, mkdtempSync, readdirSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Result, plumbline, plumblineHere, program } from './run.ts';

/**
 * Control characters (ECMA-48, 5.2 and 5.3: C0 and C1), as they are and in sequences that clear a screen, name a window
 * or write to a clipboard; and marks that turn the direction of writing (Unicode UAX #9, 2).
 */
const MARKS = [
  '\u001b[2J\u001b[31m',
  '\u001b]0;title\u0007',
  '\u001b]52;c;aGk=\u001b\\',
  '\u009b31m',
  '\u0085\u0090\u009d',
  '\b\b\b\u007f\u000b\u000c',
  '\r',
  '\u202e\u2066\u2069\u200f\u061c',
  '\u2028\u2029',
].join('x');
/** Of a file's name: all but what no file may have. A line of its own is a command to the log of a CI service. */
const NAMED = `\n::error::x${MARKS}`;

/** Whatever is not to be seen, but line breaks and tabs, of which no text of ours is in doubt. */
const UNSEEN =
  /[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f-\u009f\u061c\u200e\u200f\u2028-\u202e\u2066-\u2069\ufeff]|\r(?!\n)/;

const NAME = JSON.stringify(`gate${MARKS}`);

describe('what is printed', () => {
  const root = mkdtempSync(join(tmpdir(), 'plumbline-visible-'));
  const site = join(root, 'site');
  const recordings = join(root, 'recordings');
  before(() => {
    for (const folder of [site, recordings, join(recordings, NAMED.slice(1))]) mkdirSync(folder);
    writeFileSync(
      join(site, `a${NAMED}.site.yaml`),
      `# ${MARKS.replaceAll('\r', '').replace(/[\u0000-\u001f\u007f]/g, '')}
site: {name: ${NAME}, timezone: UTC}
devices:
  gate-cam: {kind: camera, speed: 100 Mb/s, address: 192.168.20.31, description: ${NAME}}  # \u202e\u0085\u009b31m
  yard-cam: {kind: camera, speed: 100 Mb/s, address: 192.168.20.31}
  barn-cam: {kind: camera, adress: 192.168.20.33}  # \u202e\u0085\u009b31m
  ${NAME}: {kind: camera, location: ${NAME}}
  recorder: {kind: server, speed: 1 Gb/s, address: 192.168.20.5}
cables:
  - {from: gate-cam, to: recorder, label: ${NAME}}
streams:
  gate: {source: gate-cam, transport: rtsp, port: 554, video: {codec: h264, bitrate: 6 Mb/s}, receivers: [recorder, ${NAME}]}
volumes:
  archive: {host: recorder, capacity: 8 TB, path: ${JSON.stringify(recordings)}}
recordings:
  gate: {stream: gate, volume: archive, segment: 60 s, keep: 14 d, file: "gate/%Y.mp4"}
  ${NAME}: {stream: ${NAME}, volume: ${NAME}, file: ${NAME}}
`,
    );
    // In the line of a finding, where only what YAML takes for text may stand.
    writeFileSync(join(site, 'b.site.yaml'), `devices:\n  \u001b[31mbarn: {kind: switch}\u009b\n`);
    for (const name of [NAMED, `2026${MARKS}.mp4`]) writeFileSync(join(recordings, name), 'x');
  });
  after(() => rmSync(root, { recursive: true }));

  function isSeen({ status, out, err }: Result, words: string): void {
    assert.ok(status === 0 || status === 1 || status === 2, `${words}: ${status}\n${err}`);
    assert.ok(out + err !== '', words);
    assert.doesNotMatch(out, UNSEEN, words);
    assert.doesNotMatch(err, UNSEEN, words);
    assert.doesNotMatch(out + err, /^::error::x/m, `${words}: a line of its own`);
  }

  const COMMANDS: readonly (readonly string[])[] = [
    ...['text', 'json', 'sarif', 'junit', 'github'].map((format) => ['check', '--format', format, site]),
    ...['text', 'json', 'html'].map((format) => ['report', '--format', format, site]),
    ['fix', '--dry-run', site],
    ['fix', join(root, `absent${MARKS}`)],
    ['new', site],
    ['explain', MARKS],
    ['explain', 'streams', 'gate', '--site', site],
    ['make', 'address-plan', '--site', site],
    ['make', 'recorders', '--site', site],
    ['make', 'sdp', '--site', site],
    ['make', 'sdp', MARKS, '--site', site],
    ['audit', 'recordings', '--site', site],
    ['audit', 'counters', join(recordings, NAMED), '--site', site],
    ['audit', 'probe', join(recordings, NAMED), '--site', site],
    ['audit', 'announcements', join(recordings, NAMED), '--site', site],
    ['footage', site, '--recording', MARKS, '--from', MARKS, '--to', MARKS, '--out', MARKS],
    [MARKS],
    ['check', `--${MARKS}`],
    ['audit', 'recordings', `--${MARKS}`],
  ];
  for (const words of COMMANDS)
    it(`of ${words.map((word) => word.replace(root, '').replaceAll(MARKS, '…').replaceAll('\n', ' ')).join(' ')}`, async () => {
      isSeen(await plumblineHere(words), words.join(' '));
    });

  it('of announce', async () => {
    const folder = join(root, 'sdp');
    mkdirSync(folder);
    writeFileSync(join(folder, `${NAMED}.sdp`), `v=0\r\ns=${MARKS}\r\n`);
    const child = spawn(process.execPath, [program, 'announce', folder, '--interface', '127.0.0.1']);
    let out = '';
    child.stdout.on('data', (data: Buffer) => (out += data.toString()));
    child.stderr.on('data', (data: Buffer) => (out += data.toString()));
    const ended = new Promise((resolve) => child.once('close', resolve));
    while (!/not announced|cannot/.test(out)) await new Promise((then) => setTimeout(then, 50));
    child.kill('SIGTERM');
    await ended;
    isSeen({ status: 0, out, err: '' }, 'announce');
  });

  it('of check --watch', async () => {
    const child = spawn(process.execPath, [program, 'check', '--watch', site], {
      env: { ...process.env, NO_COLOR: '1' },
    });
    let out = '';
    child.stdout.on('data', (data: Buffer) => (out += data.toString()));
    const ended = new Promise((resolve) => child.once('close', resolve));
    const until = async (what: RegExp): Promise<void> => {
      while (!what.test(out)) await new Promise((then) => setTimeout(then, 50));
    };
    await until(/Waiting for changes/);
    writeFileSync(join(site, 'new'), '');
    renameSync(join(site, 'new'), join(site, `c${NAMED}.site.yaml`));
    await until(/changed/);
    child.kill('SIGINT');
    await ended;
    rmSync(join(site, `c${NAMED}.site.yaml`));
    isSeen({ status: 0, out, err: '' }, 'check --watch');
  });

  it('keeps its own colours, and none that a text brings along', () => {
    const { out } = plumbline(['check', site], { env: { NO_COLOR: undefined, FORCE_COLOR: '1' } });
    const own = /\u001b\[(?:1|2|22|3[134]|39)m/g;
    assert.match(out, own);
    assert.doesNotMatch(out.replace(own, ''), UNSEEN);
    const plain = plumbline(['check', site]).out;
    assert.equal(out.replace(own, ''), plain, 'so as many colours begin as without the texts of the site');
  });

  it('is for machines what it was', async () => {
    const { diagnostics } = JSON.parse((await plumblineHere(['check', '--format', 'json', site])).out) as {
      diagnostics: readonly { file: string }[];
    };
    const named = diagnostics.filter(({ file }) => file.endsWith(`a${NAMED}.site.yaml`));
    assert.ok(named.length > 0, 'the name of a file is whole');
    assert.ok(readdirSync(site).includes(`a${NAMED}.site.yaml`));
  });
});
