// Whatever writes does so whole or not at all, and says in a sentence why it could not.
import assert from 'node:assert/strict';
import { spawnSync } from 'node:child_process';
import {
  chmodSync,
  chownSync,
  cpSync,
  existsSync,
  lstatSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  readdirSync,
  rmSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { uriOf } from '../../server/src/machine/disk.ts';
import { rewrite } from '../../server/src/machine/rewrite.ts';
import { needs, unavailable } from '../availability.ts';
import { type Result, plumblineHere, program } from './run.ts';

/** A text with one safe fix, as large as wanted. */
const wrong = (name: string, filler = 0): string =>
  `devices:\n  ${name}: {kind: camera, adress: 192.168.20.31}\n${'# a remark\n'.repeat(filler)}`;
const right = (name: string): string => wrong(name).replace('adress', 'address');

describe('plumbline, where it writes', () => {
  let folder: string;
  const disks: string[] = [];
  beforeEach(() => (folder = mkdtempSync(join(tmpdir(), 'plumbline-writes-'))));
  afterEach(() => {
    for (const disk of disks.splice(0)) spawnSync('umount', [disk]);
    rmSync(folder, { recursive: true });
  });

  const at = (...names: string[]): string => join(folder, ...names);
  const text = (...names: string[]): string => readFileSync(at(...names), 'utf8');

  /** A disk of its own of so many pages of 4 KiB. */
  function disk(context: Mocha.Context, pages: number): string {
    const path = at('disk');
    mkdirSync(path);
    const { status, stderr } = spawnSync('mount', ['-t', 'tmpfs', '-o', `size=${4 * pages}k`, 'tmpfs', path], {
      encoding: 'utf8',
    });
    if (status !== 0) unavailable(context, `a small disk of its own needs root (mount -t tmpfs): ${stderr}`);
    disks.push(path);
    return path;
  }

  /** Leaves no byte of it free. */
  function fill(path: string): void {
    const { stderr } = spawnSync('dd', ['if=/dev/zero', `of=${path}/filler`, 'bs=4096'], { encoding: 'utf8' });
    assert.match(stderr, /No space left/);
  }

  /** As somebody to whom modes mean something. */
  function asNobody(context: Mocha.Context, ...words: string[]): Result {
    const command = [process.execPath, program, ...words];
    const isRoot = process.getuid?.() === 0;
    if (isRoot) needs(context, 'setpriv', 'util-linux');
    const rights = ['setpriv', '--reuid=65534', '--regid=65534', '--clear-groups'];
    const [file = '', ...rest] = isRoot ? [...rights, ...command] : command;
    const { status, stdout, stderr } = spawnSync(file, rest, {
      encoding: 'utf8',
      env: { ...process.env, NO_COLOR: '1', NODE_DISABLE_COMPILE_CACHE: '1' },
    });
    return { status, out: stdout, err: stderr };
  }

  function says({ status, err }: Result, why: RegExp): void {
    assert.equal(status, 2, err);
    assert.match(err, /^plumbline: .*$/m);
    assert.doesNotMatch(err, /^ +at |node:/m, 'a sentence and no stack');
    assert.match(err, why);
  }

  describe('fix', () => {
    it('leaves a site on a full disk as it was, to the byte', async function () {
      const path = disk(this, 64);
      writeFileSync(join(path, 'a.site.yaml'), wrong('gate-cam', 3000));
      fill(path);
      says(await plumblineHere(['fix', path]), /the disk is full\. Nothing was changed/);
      assert.equal(readFileSync(join(path, 'a.site.yaml'), 'utf8'), wrong('gate-cam', 3000));
      assert.deepEqual(readdirSync(path).sort(), ['a.site.yaml', 'filler']);
    });

    it('leaves a site on a disk that can only be read', async function () {
      const path = disk(this, 64);
      writeFileSync(join(path, 'a.site.yaml'), wrong('gate-cam'));
      assert.equal(spawnSync('mount', ['-o', 'remount,ro', path]).status, 0);
      says(await plumblineHere(['fix', path]), /the disk can only be read/);
    });

    it('changes no file where one of them may not be written to', function () {
      chmodSync(folder, 0o777);
      for (const name of ['a', 'b', 'c']) {
        writeFileSync(at(`${name}.site.yaml`), wrong(name));
        chmodSync(at(`${name}.site.yaml`), name === 'b' ? 0o444 : 0o666);
      }
      says(asNobody(this, 'fix', folder), /b\.site\.yaml cannot be written: permission is denied/);
      for (const name of ['a', 'b', 'c']) assert.equal(text(`${name}.site.yaml`), wrong(name));
      assert.equal(readdirSync(folder).length, 3);
    });

    it('changes no file of any site where one lies in a folder that may not be written to', function () {
      chmodSync(folder, 0o755);
      for (const name of ['a', 'b']) {
        mkdirSync(at(name));
        writeFileSync(at(name, 'x.site.yaml'), wrong(name));
        chmodSync(at(name, 'x.site.yaml'), 0o666);
        chmodSync(at(name), name === 'b' ? 0o555 : 0o777);
      }
      says(
        asNobody(this, 'fix', at('a'), at('b')),
        /A file in .*b, beside .*, cannot be written: permission is denied/,
      );
      for (const name of ['a', 'b']) assert.equal(text(name, 'x.site.yaml'), wrong(name));
    });

    it('keeps the mode and the owner of a file, and a link to it', async function () {
      writeFileSync(at('real.txt'), wrong('gate-cam'));
      symlinkSync('real.txt', at('a.site.yaml'));
      chmodSync(at('real.txt'), 0o640);
      if (process.getuid?.() === 0) chownSync(at('real.txt'), 65534, 65534);
      const { uid, gid } = statSync(at('real.txt'));
      assert.equal((await plumblineHere(['fix', folder])).status, 0);
      assert.equal(text('real.txt'), right('gate-cam'));
      assert.ok(lstatSync(at('a.site.yaml')).isSymbolicLink());
      const after = statSync(at('real.txt'));
      assert.deepEqual([after.mode & 0o777, after.uid, after.gid], [0o640, uid, gid]);
      assert.deepEqual(readdirSync(folder).sort(), ['a.site.yaml', 'real.txt']);
    });

    it('changes nothing else: line ends, a byte order mark and the last line stay as they are', async () => {
      const odd = (key: string): string =>
        `\ufeff# é\r\ndevices:\r\n  gate-cam: {kind: camera, ${key}: 192.168.20.31}\r\n\t`;
      writeFileSync(at('a.site.yaml'), odd('adress').trimEnd());
      assert.equal((await plumblineHere(['fix', folder])).status, 0);
      assert.equal(text('a.site.yaml'), odd('address').trimEnd());
    });

    it('leaves what somebody has changed since it was read', () => {
      writeFileSync(at('a.site.yaml'), wrong('yard-cam'));
      const read = { uri: uriOf(at('a.site.yaml')), before: wrong('gate-cam'), after: right('gate-cam') };
      assert.throws(() => rewrite([read]), /was changed while it was looked at/);
      assert.equal(text('a.site.yaml'), wrong('yard-cam'));
    });

    for (const [when, call, then] of [
      ['all is written and nothing has its name', 'renameSync', wrong('gate-cam')],
      ['all has its name and the old files have one too', 'rmSync', right('gate-cam')],
    ] as const)
      it(`clears what one that was killed has left when ${when}, and nothing else`, async () => {
        writeFileSync(at('a.site.yaml'), wrong('gate-cam'));
        writeFileSync(at('.plumbline-notes'), 'mine');
        const { status, signal } = spawnSync(
          process.execPath,
          ['--require', join(import.meta.dirname, 'kill-at.cjs'), program, 'fix', folder],
          { env: { ...process.env, NODE_DISABLE_COMPILE_CACHE: '1', KILL_AT: call } },
        );
        assert.deepEqual([status, signal], [null, 'SIGKILL']);
        assert.equal(text('a.site.yaml'), then);
        assert.ok(readdirSync(folder).length > 2, 'there is something to clear');
        assert.equal((await plumblineHere(['fix', folder])).status, 0);
        assert.equal(text('a.site.yaml'), right('gate-cam'));
        assert.deepEqual(readdirSync(folder).sort(), ['.plumbline-notes', 'a.site.yaml']);
      });
  });

  describe('make', () => {
    const site = 'samples/harrow-lane';
    const make = (out: string): Promise<Result> =>
      plumblineHere(['make', 'recorders', 'recorder', '--site', site, '--out', out]);

    it('ends where the folder cannot be made', async () => {
      const { status, signal } = spawnSync(
        process.execPath,
        [program, 'make', 'sdp', '--site', site, '--out', '/proc/x'],
        { timeout: 120_000 },
      );
      assert.deepEqual([status, signal], [2, null]);
      writeFileSync(at('file'), '');
      says(await make(at('file', 'deep', 'x')), /The folder .* cannot be made: a part of its path is no folder/);
    });

    it('makes folders that are not there, and replaces what it made before', async () => {
      const first = await make(at('a', 'b'));
      assert.equal(first.status, 0, first.err);
      const files = first.out.trim().split('\n');
      assert.ok(files.length > 3);
      for (const file of files) assert.ok(existsSync(file), file);
      const scripts = files.filter((file) => file.includes('/lib/'));
      assert.ok(scripts.length > 0);
      for (const script of scripts) assert.equal(statSync(script).mode & 0o111, 0o111);
      assert.equal((await make(at('a', 'b'))).out, first.out);
    });

    it('leaves nothing on a full disk, neither short nor empty', async function () {
      const path = disk(this, 16);
      fill(path);
      says(await make(join(path, 'made')), /the disk is full/);
      const files = readdirSync(path, { recursive: true, withFileTypes: true }).filter((entry) => entry.isFile());
      assert.deepEqual(
        files.map(({ name }) => name),
        ['filler'],
      );
    });

    it('follows no link out of the folder: of a file, of a folder, or to nothing', async () => {
      mkdirSync(at('outside'));
      writeFileSync(at('outside', 'mine'), 'mine');
      const [first = ''] = (await make(at('made'))).out.split('\n');
      const name = first.slice(at('made').length + 1);
      for (const link of [
        (out: string) => symlinkSync(at('outside'), join(out, 'recorder')),
        (out: string) => {
          mkdirSync(join(out, 'recorder'));
          symlinkSync(at('outside', 'mine'), join(out, name));
        },
        (out: string) => {
          mkdirSync(join(out, 'recorder'));
          symlinkSync(at('outside', 'absent'), join(out, name));
        },
      ]) {
        const out = mkdtempSync(at('out-'));
        link(out);
        says(await make(out), /is a link that leads (out of|nowhere)/);
        assert.deepEqual([readdirSync(at('outside')), text('outside', 'mine')], [['mine'], 'mine']);
      }
    });
  });

  it('new leaves nothing on a full disk', async function () {
    const path = disk(this, 16);
    fill(path);
    says(await plumblineHere(['new', path]), /the disk is full/);
    assert.deepEqual(readdirSync(path), ['filler']);
  });

  describe('where nothing can be printed', () => {
    /** With its standard output or standard error where the shell says. */
    const shell = (context: Mocha.Context, words: string, where: string): Result => {
      needs(context, 'bash');
      if (!existsSync('/dev/full')) unavailable(context, 'only Linux has /dev/full');
      const { status, stdout, stderr } = spawnSync(
        'bash',
        ['-c', `"$0" "$1" ${words} ${where}`, process.execPath, program],
        { encoding: 'utf8', env: { ...process.env, NO_COLOR: '1' } },
      );
      return { status, out: stdout, err: stderr };
    };

    for (const words of [
      'check samples/first-draft',
      'report samples/harrow-lane',
      'fix --dry-run samples/first-draft',
    ])
      it(`says so: ${words}`, function () {
        says(shell(this, words, '> /dev/full'), /Standard output cannot be written: the disk is full/);
      });

    it('make has written all of it, and says so', async function () {
      const made = shell(this, `make sdp --site samples/harrow-lane --out '${folder}'`, '> /dev/full');
      says(made, /Standard output cannot be written: the disk is full\. All is written\./);
      const gone = shell(
        this,
        `make sdp --site samples/harrow-lane --out '${at('b')}'`,
        '| true; exit ${PIPESTATUS[0]}',
      );
      says(gone, /nobody reads it any more\. All is written\./);
      const count = (await plumblineHere(['make', 'sdp', '--site', 'samples/harrow-lane', '--out', at('c')])).out.split(
        '\n',
      ).length;
      assert.deepEqual([readdirSync(folder).length - 2, readdirSync(at('b')).length], [count - 1, count - 1]);
    });

    it('fix has written all of it where standard error is closed', async function () {
      cpSync('samples/first-draft', at('draft'), { recursive: true });
      const { status, err } = shell(this, `fix '${at('draft')}'`, '2> /dev/full');
      assert.deepEqual([status, err], [2, '']);
      assert.equal((await plumblineHere(['fix', '--dry-run', at('draft')])).out, '');
    });
  });
});
