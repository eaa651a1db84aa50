/**
 * Names of what is not finished yet, beside what it will become. A name says which process it belongs to, so that what
 * was left by one that was killed can be told from what another is working on.
 */

import { createHash, randomBytes } from 'node:crypto';
import { readdirSync, readlinkSync, rmSync } from 'node:fs';
import { hostname } from 'node:os';
import { join } from 'node:path';
import { codeOf, codeOfSystem } from './failures.ts';

const PREFIX = '.plumbline-';

/** A process is one of this machine alone, and where it runs in a container, of that. */
function here(): string {
  let space = '';
  try {
    space = readlinkSync('/proc/self/ns/pid');
  } catch (error) {
    codeOfSystem(error); // Only Linux has it: namespaces(7).
  }
  return createHash('sha256').update(`${hostname()} ${space}`).digest('hex').slice(0, 12);
}

/** A path beside others that nobody can guess, for a file or folder of this process. */
export function unfinishedIn(folder: string): string {
  return join(folder, `${PREFIX}${here()}-${process.pid}-${randomBytes(8).toString('hex')}`);
}

/** Removes what processes of this machine that are gone have left unfinished in a folder, as far as it may. */
export function clearLeftovers(folder: string): void {
  const own = `${PREFIX}${here()}-`;
  for (const name of namesIn(folder)) {
    if (!name.startsWith(own)) continue;
    const pid = Number(/^(\d+)-[0-9a-f]{16}$/.exec(name.slice(own.length))?.[1]);
    if (!Number.isNaN(pid) && !runs(pid)) remove(join(folder, name));
  }
}

function namesIn(folder: string): readonly string[] {
  try {
    return readdirSync(folder);
  } catch (error) {
    codeOfSystem(error); // Whoever writes there will be told what is wrong with it.
    return [];
  }
}

function runs(pid: number): boolean {
  try {
    return process.kill(pid, 0);
  } catch (error) {
    // One of another user may not be asked, but is there.
    return codeOf(error) !== 'ESRCH';
  }
}

/** What cannot be removed is another user's, and stays. */
function remove(path: string): void {
  try {
    rmSync(path, { recursive: true, force: true, maxRetries: 3 });
  } catch (error) {
    codeOfSystem(error);
  }
}
