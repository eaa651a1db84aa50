/** Keeps compiled code for the next start, with Node 22.1 and later. */

import module from 'node:module';
import { homedir } from 'node:os';
import { join } from 'node:path';
import { codeOfSystem } from './failures.ts';

/** The functions of newer versions of Node. */
type CompileCache = typeof module & {
  readonly enableCompileCache?: (folder: string) => unknown;
  /** From 22.10 on. */
  readonly flushCompileCache?: () => void;
};

/** How long a program runs before its code is kept, in ms: by then a server has loaded all that a start needs. */
const SETTLED = 1000;

/** Runs a program of one CommonJS file by its path. `NODE_DISABLE_COMPILE_CACHE` turns the cache off. */
export function runWithCache(program: string): void {
  const { enableCompileCache, flushCompileCache } = module as CompileCache;
  // Node's default is in the temporary folder, which other users can write to as well.
  const folder = cacheFolder();
  if (enableCompileCache !== undefined && folder !== undefined) {
    enableCompileCache(folder);
    // Node keeps the code at the end of the process, but an editor may end a server by a signal.
    if (flushCompileCache !== undefined) setTimeout(flushCompileCache, SETTLED).unref();
  }
  module.createRequire(program)(program);
}

/** By the XDG Base Directory Specification, Apple's File System Programming Guide, or on Windows LOCALAPPDATA. */
function cacheFolder(): string | undefined {
  const { env, platform } = process;
  try {
    if (platform === 'darwin') return join(homedir(), 'Library', 'Caches', 'plumbline');
    if (platform === 'win32')
      return join(env.LOCALAPPDATA || join(homedir(), 'AppData', 'Local'), 'plumbline', 'Cache');
    return join(env.XDG_CACHE_HOME || join(homedir(), '.cache'), 'plumbline');
  } catch (error) {
    codeOfSystem(error); // A user without a home, such as that of a service.
    return undefined;
  }
}
