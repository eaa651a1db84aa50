import assert from 'node:assert/strict';
import { type ChildProcess, spawn } from 'node:child_process';
import { cpSync, mkdtempSync, readFileSync, readdirSync, renameSync, rmSync, unlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { plumbline, program } from './run.ts';

describe('plumbline check --watch', function () {
  let folder: string;
  let child: ChildProcess;
  let out: string;
  let ended: Promise<number | null>;

  beforeEach(async () => {
    folder = mkdtempSync(join(tmpdir(), 'plumbline-watch-'));
    cpSync('samples/harrow-lane', folder, { recursive: true });
    child = spawn(process.execPath, [program, 'check', '--watch', folder], {
      env: { ...process.env, NO_COLOR: '1' },
      stdio: ['ignore', 'pipe', 'inherit'],
    });
    ended = new Promise((resolve) => child.once('exit', resolve));
    out = '';
    child.stdout?.on('data', (data: Buffer) => {
      out += data.toString();
    });
    await said(/nothing found in .*\.\nWaiting for changes; Ctrl\+C ends\.\n$/);
  });
  afterEach(() => {
    child.kill('SIGKILL');
    rmSync(folder, { recursive: true });
  });

  /** Waits until it has said something since the last time that it was waited for. */
  async function said(words: RegExp): Promise<string> {
    const until = Date.now() + 120_000;
    while (!words.test(out)) {
      if (Date.now() > until) throw new Error(`it did not say ${words} but:\n${out}`);
      await new Promise((resolve) => setTimeout(resolve, 20));
    }
    const all = out;
    out = '';
    return all;
  }

  const cameras = (): string => join(folder, 'cameras.site.yaml');
  const clash = (): string => readFileSync(cameras(), 'utf8').replace('192.168.20.32', '192.168.20.31');

  it('tells what is found after a change, and ends on Ctrl+C with the last status', async () => {
    writeFileSync(cameras(), clash());
    // A file that is seen before it is complete is reported first.
    const told = await said(/error .*192\.168\.20\.31[\s\S]*Waiting for changes/);
    assert.match(told, /^\n\d\d:\d\d:\d\d cameras\.site\.yaml changed\n/);
    child.kill('SIGINT');
    assert.equal(await ended, 1);
  });

  it('sees a file that an editor writes anew and renames, and is in order again when it is put right', async () => {
    const before = readFileSync(cameras(), 'utf8');
    writeFileSync(join(folder, '.cameras.swap'), clash());
    renameSync(join(folder, '.cameras.swap'), cameras());
    await said(/error [\s\S]*Waiting/);
    writeFileSync(cameras(), before);
    await said(/changed\n.*nothing found in .*\.\nWaiting/);
    child.kill('SIGINT');
    assert.equal(await ended, 0);
  });

  it('sees files that come and go, and waits where none is left', async () => {
    writeFileSync(join(folder, 'more.site.yaml'), 'devices: {spare: {kind: camera, address: 192.168.20.31}}\n');
    await said(/more\.site\.yaml changed\n[\s\S]*spare[\s\S]*Waiting/);
    unlinkSync(join(folder, 'more.site.yaml'));
    await said(/more\.site\.yaml changed\n.*nothing found/);
    for (const name of readdirSync(folder)) rmSync(join(folder, name), { recursive: true });
    await said(/holds no \*\.site\.yaml[\s\S]*Waiting/);
    child.kill('SIGINT');
    assert.equal(await ended, 2);
  });

  it('is for a person: other formats are refused', () => {
    const { status, err } = plumbline(['check', '--watch', '--format', 'json', folder]);
    assert.equal(status, 2);
    assert.match(err, /not json/);
  });
});
