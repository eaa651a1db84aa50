// Fetches VS Code's browser-only build from the npm registry, at the versions of package-lock.json beside this file.
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, readFileSync } from 'node:fs';
import { cp, mkdir, rm, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { repository } from '../../client/open/install.ts';

const pinned = join(repository, 'test', 'web');
const cache = join(repository, '.vscode-test', 'web');
const complete = join(cache, 'complete');

/** Folder with `node_modules` of it, where the pinned versions are already here. */
export function installedWebEditor(): string | undefined {
  return existsSync(complete) && readFileSync(complete, 'utf8') === pin() ? cache : undefined;
}

/**
 * The same, fetched first where it is not here yet: about 600 MB on disk.
 *
 * @throws Error with npm's words where it could not be fetched
 */
export async function installWebEditor(): Promise<string> {
  const present = installedWebEditor();
  if (present !== undefined) return present;
  await rm(cache, { recursive: true, force: true });
  await mkdir(cache, { recursive: true });
  for (const file of ['package.json', 'package-lock.json']) await cp(join(pinned, file), join(cache, file));
  const words = ['ci', '--ignore-scripts', '--no-audit', '--no-fund', '--loglevel=error'];
  const { status, stderr } = spawnSync('npm', words, {
    cwd: cache,
    encoding: 'utf8',
    stdio: ['ignore', 'ignore', 'pipe'],
  });
  if (status !== 0) throw new Error(`npm could not fetch VS Code's browser-only build:\n${stderr}`);
  await writeFile(complete, pin());
  return cache;
}

/** A hash of the pinned versions: an install of others is fetched again. */
function pin(): string {
  return createHash('sha256')
    .update(readFileSync(join(pinned, 'package-lock.json')))
    .digest('hex');
}
