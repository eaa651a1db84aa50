// What is given to a command and never ends, never begins, or is larger than any file of its kind.
import assert from 'node:assert/strict';
import { execFileSync, spawn, spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, rmSync, symlinkSync, truncateSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { needs, unavailable } from '../availability.ts';
import { plumbline, plumblineHere, program } from './run.ts';

const SITE = 'samples/harrow-lane';
/** A start that is right, by the kind of audit. */
const STARTS: Readonly<Record<string, string | Uint8Array>> = {
  counters: 'time,device,ifName,ifHCInOctets\n2026-03-01T12:00:00Z,core,1,1\n',
  // The header of a capture (pcap-savefile(5)) of Ethernet; zeros after it are packets of no length.
  announcements: new Uint8Array(Uint32Array.from([0xa1b2c3d4, 0x0004_0002, 0, 0, 65_535, 1]).buffer),
  probe: '{"streams": [',
};
const TERABYTE = 2 ** 40;

describe('plumbline, of what does not end', () => {
  let folder: string;
  beforeEach(() => (folder = mkdtempSync(join(tmpdir(), 'plumbline-endless-'))));
  afterEach(() => rmSync(folder, { recursive: true }));

  const at = (name: string): string => join(folder, name);
  function pipe(context: Mocha.Context, name = 'pipe'): string {
    needs(context, 'mkfifo', 'coreutils');
    execFileSync('mkfifo', [at(name)]);
    return at(name);
  }
  function zeros(context: Mocha.Context): string {
    if (!existsSync('/dev/zero')) unavailable(context, 'there is no /dev/zero');
    return '/dev/zero';
  }
  /** Takes no room on the disk. */
  function sparse(start: string | Uint8Array, name = 'sparse'): string {
    writeFileSync(at(name), start);
    truncateSync(at(name), TERABYTE);
    return at(name);
  }

  for (const [kind, start] of Object.entries(STARTS))
    for (const [what, make, why] of [
      ['a pipe that nobody writes to', pipe, /it is no ordinary file/],
      ['a device', zeros, /it is no ordinary file/],
      [
        'a link to a device',
        (context: Mocha.Context) => (symlinkSync(zeros(context), at('link')), at('link')),
        /it is no ordinary file/,
      ],
      ['a folder', () => folder, /it is a folder/],
      ['a terabyte', () => sparse(start), /it has more than [\d.]+ [MG]B/],
    ] as const)
      it(`audit ${kind} says what is wrong with ${what}`, async function () {
        const words = ['audit', kind, make(this), '--site', SITE];
        // One that is opened would hang the process.
        const { status, err } = make === pipe ? plumbline(words, { timeout: 120_000 }) : await plumblineHere(words);
        assert.equal(status, 2, err);
        assert.match(err, /^plumbline: .*\n$/);
        assert.match(err, why);
      });

  for (const words of [
    ['audit', 'announcements', '-', '--site', SITE],
    ['check', '--stdin-filename', `${SITE}/a.site.yaml`],
  ])
    it(`${words.slice(0, 2).join(' ')} reads no more of an endless standard input than it needs`, function () {
      zeros(this);
      needs(this, 'bash');
      needs(this, 'cat', 'coreutils');
      const { status, signal, stderr } = spawnSync(
        'bash',
        ['-c', `exec "$0" "$@" < <(cat /dev/zero)`, process.execPath, program, ...words],
        { encoding: 'utf8', timeout: 120_000, killSignal: 'SIGKILL' },
      );
      assert.deepEqual([status, signal], [2, null], stderr);
      assert.match(stderr, /^plumbline: .*(no capture|larger|more than)/);
    });

  it('check reads no pipe that a file became after it was looked at', function () {
    needs(this, 'mkfifo', 'coreutils');
    writeFileSync(at('a.site.yaml'), 'site: {name: Harrow Lane}\n');
    const { status, signal, stdout } = spawnSync(
      process.execPath,
      ['--require', join(import.meta.dirname, 'pipe-after-look.cjs'), program, 'check', folder],
      { encoding: 'utf8', timeout: 120_000, env: { ...process.env, NO_COLOR: '1', NODE_DISABLE_COMPILE_CACHE: '1' } },
    );
    assert.deepEqual([status, signal], [1, null]);
    assert.match(stdout, /This file cannot be read: it is no ordinary file/);
  });

  it('announce passes over what is no file or too large, announces the others, and withdraws them', async function () {
    mkdirSync(at('sdp'));
    pipe(this, 'sdp/a.sdp');
    symlinkSync(zeros(this), at('sdp/b.sdp'));
    sparse('v=0\r\n', 'sdp/c.sdp');
    const made = plumbline(['make', 'sdp', 'gate-live', '--site', SITE]);
    assert.equal(made.status, 0, made.err);
    writeFileSync(at('sdp/d.sdp'), made.out);
    const child = spawn(process.execPath, [program, 'announce', at('sdp'), '--interface', '127.0.0.1']);
    let out = '';
    for (const stream of [child.stdout, child.stderr]) stream.on('data', (data: Buffer) => (out += data.toString()));
    const ended = new Promise((resolve) => child.once('close', resolve));
    const until = Date.now() + 120_000;
    while (!/announced on/.test(out) && child.exitCode === null && Date.now() < until)
      await new Promise((then) => setTimeout(then, 50));
    child.kill('SIGTERM');
    const killed = setTimeout(() => child.kill('SIGKILL'), 60_000);
    assert.equal(await ended, 0, out);
    clearTimeout(killed);
    for (const name of ['a', 'b'])
      assert.match(out, new RegExp(`${name}\\.sdp cannot be read: it is no ordinary file`));
    assert.match(out, /c\.sdp: it has more than 65\.5 kB/);
    assert.match(out, /: announced on[^]*: withdrawn\n/);
  });
});
