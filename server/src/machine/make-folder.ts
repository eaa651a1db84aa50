import { mkdirSync, statSync } from 'node:fs';
import { dirname } from 'node:path';
import { codeOf } from './failures.ts';

/**
 * Makes a folder and those above it, where they are missing. Step by step: Node's recursive mkdir never ends where a
 * folder exists and the system reports ENOENT for one in it, as in /proc.
 *
 * @throws what the system refuses
 */
export function makeFolder(path: string): void {
  try {
    mkdirSync(path);
  } catch (error) {
    const code = codeOf(error);
    if (isFolder(path)) return;
    const above = dirname(path);
    if (code !== 'ENOENT' || above === path || isFolder(above)) throw error;
    makeFolder(above);
    mkdirSync(path);
  }
}

function isFolder(path: string): boolean {
  return statSync(path, { throwIfNoEntry: false })?.isDirectory() === true;
}
