/**
 * Names of unfinished files, beside the finished ones. A name contains the process that it belongs to, so that files
 * left by a process that was killed can be distinguished from those of one that still runs.
 */

import { createHash, randomBytes } from 'node:crypto';
import { readdirSync, readlinkSync, rmSync } from 'node:fs';
import { hostname } from 'node:os';
import { join } from 'node:path';
import { codeOf, codeOfSystem } from './failures.ts';

const PREFIX = '.plumbline-';

/** Identifies this machine and, in a container, its namespace of process ids. */
function here(): string {
  let space = '';
  try {
    space = readlinkSync('/proc/self/ns/pid');
  } catch (error) {
    codeOfSystem(error); // Only Linux has it: namespaces(7).
  }
  return createHash('sha256').update(`${hostname()} ${space}`).digest('hex').slice(0, 12);
}

/** A path in the folder that nobody can guess, for an unfinished file or folder of this process. */
export function unfinishedIn(folder: string): string {
  return join(folder, `${PREFIX}${here()}-${process.pid}-${randomBytes(8).toString('hex')}`);
}

/** Removes unfinished files in a folder that belong to ended processes of this machine, where it may. */
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
    codeOfSystem(error); // Writing to the folder will fail with the same error and report it.
    return [];
  }
}

function runs(pid: number): boolean {
  try {
    return process.kill(pid, 0);
  } catch (error) {
    // A process of another user may not be signalled, but exists.
    return codeOf(error) !== 'ESRCH';
  }
}

/** A file that cannot be removed belongs to another user, and stays. */
function remove(path: string): void {
  try {
    rmSync(path, { recursive: true, force: true, maxRetries: 3 });
  } catch (error) {
    codeOfSystem(error);
  }
}
