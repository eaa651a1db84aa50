// `npm run package` in a copy of the repository, so that dist/ here stays as it is.
import { execFileSync } from 'node:child_process';
import { cp, mkdtemp, readdir, rm, symlink } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { repository } from '../../client/open/install.ts';

export interface Packed {
  /** Path of the .vsix. */
  readonly file: string;
  readonly remove: () => Promise<void>;
}

export async function packExtension(): Promise<Packed> {
  const folder = await mkdtemp(join(tmpdir(), 'plumbline-package-'));
  const sources = [
    'client',
    'server',
    'schemas',
    'package.json',
    'tsconfig.json',
    '.vscodeignore',
    'README.md',
    'CHANGELOG.md',
    'LICENSE',
  ];
  for (const name of sources) await cp(join(repository, name), join(folder, name), { recursive: true });
  await symlink(join(repository, 'node_modules'), join(folder, 'node_modules'), 'dir');
  execFileSync('npm', ['run', 'package', '--silent'], { cwd: folder, stdio: ['ignore', 'pipe', 'inherit'] });
  const name = (await readdir(folder)).find((candidate) => candidate.endsWith('.vsix'));
  if (name === undefined) throw new Error('npm run package left no .vsix');
  return { file: join(folder, name), remove: () => rm(folder, { recursive: true, force: true }) };
}
