// A copy of a sample that a test may edit.
import { cp, mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { repository } from '../../client/open/install.ts';

export interface SiteCopy {
  readonly folder: string;
  readonly remove: () => Promise<void>;
}

/** Copies `samples/NAME` to a temporary folder of the same name. */
export async function copySample(name: string): Promise<SiteCopy> {
  const parent = await mkdtemp(join(tmpdir(), 'plumbline-sample-'));
  const folder = join(parent, name);
  await cp(join(repository, 'samples', name), folder, { recursive: true });
  return { folder, remove: () => rm(parent, { recursive: true, force: true }) };
}
