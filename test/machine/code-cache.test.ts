// What is kept of a program runs as code, so it must be of this program, whole, and no other user's to write.
import assert from 'node:assert/strict';
import { spawnSync } from 'node:child_process';
import {
  chmodSync,
  chownSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  readdirSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { build } from 'esbuild';
import { unavailable } from '../availability.ts';

describe('code that is kept for the next start', () => {
  let root: string;
  let cache: string;
  let program: string;

  /** Runs the program through `runKept`, and says what it wrote and whether it was run by what was kept. */
  function run(env: Record<string, string> = {}): { out: string; kept: boolean } {
    const { stdout, stderr, status } = spawnSync(process.execPath, [join(root, 'start.cjs')], {
      encoding: 'utf8',
      env: { ...process.env, XDG_CACHE_HOME: cache, LOCALAPPDATA: cache, HOME: root, ...env },
    });
    assert.equal(status, 0, stderr);
    const [out = '', kept = ''] = stdout.trimEnd().split('\n');
    return { out, kept: kept === 'kept' };
  }

  const folder = (): string => join(cache, 'plumbline');
  function place(): string {
    const [only, ...others] = readdirSync(folder());
    assert.ok(only !== undefined && others.length === 0, 'one file is kept, and nothing beside it');
    return join(folder(), only);
  }

  before(async function () {
    // Elsewhere the folder does not follow from a variable.
    if (process.platform !== 'linux') unavailable(this, 'a cache folder that a variable names');
    root = mkdtempSync(join(tmpdir(), 'plumbline-code-'));
    program = join(root, 'program.cjs');
    // The engine's own word on whether it took what it was given.
    const source = `
      import { Script } from 'node:vm';
      import { runKept } from ${JSON.stringify(join(import.meta.dirname, '../../server/src/machine/code-cache.ts'))};
      let taken = false;
      const run = Script.prototype.runInThisContext;
      Script.prototype.runInThisContext = function (...of) { taken = this.cachedDataRejected === false; return run.apply(this, of); };
      runKept(${JSON.stringify(program)});
      console.log(taken ? 'kept' : 'made');`;
    await build({
      stdin: { contents: source, resolveDir: join(import.meta.dirname, '../..'), loader: 'ts' },
      bundle: true,
      platform: 'node',
      target: 'node20',
      format: 'cjs',
      outfile: join(root, 'start.cjs'),
      logLevel: 'silent',
    });
  });

  after(() => {
    if (root !== undefined) rmSync(root, { recursive: true, force: true });
  });

  beforeEach(() => {
    cache = mkdtempSync(join(root, 'cache-'));
    writeFileSync(
      program,
      'console.log(`one, ${require("node:path").basename(__filename)}, ${typeof module.exports}`);',
    );
  });

  it('the first start keeps it, the second runs by it, and both do the same', () => {
    const out = 'one, program.cjs, object';
    assert.deepEqual(run(), { out, kept: false });
    assert.deepEqual(run(), { out, kept: true });
    assert.equal(statSync(place()).mode & 0o777, 0o600);
    assert.equal(statSync(folder()).mode & 0o777, 0o700);
  });

  it('a program that changed runs as it is now, although it is as long', () => {
    run();
    writeFileSync(program, readFileSync(program, 'utf8').replace('one', 'two'));
    assert.deepEqual(run(), { out: 'two, program.cjs, object', kept: false });
    assert.equal(run().kept, true);
    place();
  });

  it('a damaged, shortened or empty one is not taken, and is put right', () => {
    run();
    const whole = readFileSync(place());
    for (const at of [0, 40, 70, whole.length >> 1, whole.length - 1]) {
      const damaged = Buffer.from(whole);
      damaged[at] = (damaged[at] ?? 0) ^ 0xff;
      writeFileSync(place(), damaged);
      assert.equal(run().kept, false, `byte ${at}`);
      assert.equal(run().kept, true);
    }
    for (const length of [0, 63, 64, whole.length - 1]) {
      writeFileSync(place(), whole.subarray(0, length));
      assert.equal(run().kept, false, `${length} bytes`);
      assert.equal(run().kept, true);
    }
  });

  it('one that others may write is not taken', () => {
    run();
    chmodSync(place(), 0o620);
    assert.equal(run().kept, false);
  });

  it('one of another user is not taken', function () {
    if (process.getuid?.() !== 0) unavailable(this, 'root is needed, to give a file away');
    run();
    chownSync(place(), 65_534, 65_534);
    assert.equal(run().kept, false);
  });

  it('a user whom the system does not know, and so without a home, runs it all the same', function () {
    if (process.getuid?.() !== 0) unavailable(this, 'root is needed, to be another user');
    chmodSync(root, 0o755);
    const { stdout, stderr } = spawnSync(process.execPath, [join(root, 'start.cjs')], {
      encoding: 'utf8',
      uid: 64_123,
      env: { PATH: '/usr/bin' },
    });
    assert.equal(stdout, 'one, program.cjs, object\nmade\n', stderr);
  });

  it('nothing is kept where Node is told so, or where the folder is none', () => {
    assert.equal(run({ NODE_DISABLE_COMPILE_CACHE: '1' }).kept, false);
    assert.deepEqual(readdirSync(cache), []);
    const file = join(cache, 'plumbline');
    writeFileSync(file, '');
    assert.deepEqual(run(), { out: 'one, program.cjs, object', kept: false });
    rmSync(file);
    mkdirSync(file);
    assert.equal(run().kept, false);
  });
});
