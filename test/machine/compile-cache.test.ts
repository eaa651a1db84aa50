// Compiled code is kept where no other user can write, on a Node that can; elsewhere the programs start all the same.
import assert from 'node:assert/strict';
import { spawn, spawnSync } from 'node:child_process';
import { chmodSync, cpSync, existsSync, mkdtempSync, readdirSync, rmSync, statSync } from 'node:fs';
import module from 'node:module';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { unavailable } from '../availability.ts';
import { program } from '../cli/run.ts';

const CAN_KEEP = 'enableCompileCache' in module;

describe('compiled code', () => {
  let root: string;
  let kept: string;
  const env = (more: Record<string, string> = {}): NodeJS.ProcessEnv => ({
    ...process.env,
    XDG_CACHE_HOME: join(root, 'cache'),
    ...more,
  });

  before(function () {
    // Elsewhere the folder does not follow from a variable.
    if (process.platform !== 'linux') unavailable(this, 'a cache folder that a variable names');
  });

  beforeEach(() => {
    root = mkdtempSync(join(tmpdir(), 'plumbline-code-'));
    kept = join(root, 'cache', 'plumbline');
  });

  afterEach(() => rmSync(root, { recursive: true, force: true }));

  it('is kept for the next start, for the user alone, where Node can', () => {
    for (let start = 0; start < 2; start++) {
      const { status, stdout } = spawnSync(process.execPath, [program, '--version'], { encoding: 'utf8', env: env() });
      assert.equal(status, 0);
      assert.match(stdout, /^\d+\.\d+\.\d+\n$/);
    }
    assert.equal(existsSync(kept), CAN_KEEP);
    if (!CAN_KEEP) return;
    const files = readdirSync(kept, { recursive: true, encoding: 'utf8' }).map((name) => statSync(join(kept, name)));
    assert.ok(files.some((file) => file.isFile() && file.size > 100_000));
    for (const file of files) assert.equal(file.mode & 0o022, 0);
  });

  it('of a server is kept although its client ends it by a signal', async () => {
    const server = spawn(process.execPath, [join(dirname(program), 'server.cjs'), '--stdio'], {
      env: env(),
      stdio: ['pipe', 'ignore', 'ignore'],
    });
    const isKept = (): boolean =>
      existsSync(kept) &&
      readdirSync(kept, { recursive: true, encoding: 'utf8' }).some(
        (name) => statSync(join(kept, name)).size > 100_000,
      );
    const isDue = (): boolean => CAN_KEEP && !isKept();
    while (isDue()) await new Promise((resolve) => setTimeout(resolve, 50));
    server.kill('SIGKILL');
    await new Promise((resolve) => server.once('exit', resolve));
    assert.equal(isKept(), CAN_KEEP);
  });

  it('is not kept where Node is told so', () => {
    const { status } = spawnSync(process.execPath, [program, '--version'], {
      env: env({ NODE_DISABLE_COMPILE_CACHE: '1' }),
    });
    assert.equal(status, 0);
    assert.equal(existsSync(kept), false);
  });

  it('is not kept for a user without a home, as a service has none', function () {
    if (process.getuid?.() !== 0) unavailable(this, 'root is needed, to be another user');
    chmodSync(root, 0o755);
    // Where the repository is, somebody else may not be let in.
    cpSync(dirname(program), join(root, 'dist'), { recursive: true });
    const { stdout, stderr } = spawnSync(process.execPath, [join(root, 'dist', 'plumbline.cjs'), '--version'], {
      encoding: 'utf8',
      uid: 64_123,
      env: { PATH: '/usr/bin' },
    });
    assert.match(stdout, /^\d+\.\d+\.\d+\n$/, stderr);
  });
});
