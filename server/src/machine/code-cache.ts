/**
 * Keeps the code that the engine makes of a program, so that the next start need not make it anew.
 *
 * Node does so by itself from 22.1 on (`module.enableCompileCache`), but Node 20 does not, and none does at an end that
 * an editor brings about by a signal. What is kept is run later, so it is taken only where no other user could write it;
 * and the engine does not notice damage (tried: Node 20), so digests stand before it.
 */

import { createHash } from 'node:crypto';
import { closeSync, fstatSync, mkdirSync, openSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { Module, createRequire } from 'node:module';
import { homedir } from 'node:os';
import { basename, dirname, join } from 'node:path';
import { cachedDataVersionTag } from 'node:v8';
import { Script } from 'node:vm';
import { codeOfSystem } from './failures.ts';

/** How long a program runs before its code is kept, in ms: by then a server has run all that a start needs. */
const SETTLED = 1000;

/** SHA-256 in bytes. */
const DIGEST = 32;

/** A CommonJS module as Node wraps it. */
type Wrapped = (exports: object, require: NodeJS.Require, module: object, file: string, folder: string) => void;

/** Runs a program of one CommonJS file, by what is kept of it where that fits. `NODE_DISABLE_COMPILE_CACHE` turns it off. */
export function runKept(program: string): void {
  const source = readFileSync(program, 'utf8');
  const place = process.env.NODE_DISABLE_COMPILE_CACHE === undefined ? placeOf(program) : undefined;
  const cachedData = place === undefined ? undefined : kept(place, source);
  const script = new Script(Module.wrap(source), { filename: program, ...(cachedData && { cachedData }) });
  if (place !== undefined && (cachedData === undefined || script.cachedDataRejected === true)) {
    const keepNow = (): void => keep(place, source, script.createCachedData());
    const keepSettled = (): void => {
      process.off('exit', keepNow);
      keepNow();
    };
    process.once('exit', keepNow);
    setTimeout(keepSettled, SETTLED).unref();
  }
  const module = { exports: {} };
  const wrapped = script.runInThisContext() as Wrapped;
  wrapped(module.exports, createRequire(program), module, program, dirname(program));
}

/** One file for each program and engine, so that nothing piles up; `undefined` for a user without a home, as a service has. */
function placeOf(program: string): string | undefined {
  let folder: string;
  try {
    folder = cacheFolder();
  } catch (error) {
    codeOfSystem(error);
    return undefined;
  }
  return join(folder, `${basename(program, '.cjs')}-${cachedDataVersionTag()}.code`);
}

/** As each system has it: the XDG Base Directory Specification, Apple's File System Programming Guide, `LOCALAPPDATA` of Windows. */
function cacheFolder(): string {
  const { env, platform } = process;
  if (platform === 'darwin') return join(homedir(), 'Library', 'Caches', 'plumbline');
  if (platform === 'win32') return join(env.LOCALAPPDATA || join(homedir(), 'AppData', 'Local'), 'plumbline', 'Cache');
  return join(env.XDG_CACHE_HOME || join(homedir(), '.cache'), 'plumbline');
}

/** What is kept of a program; `undefined` where nothing is, or of another text, or damaged, or within another user's reach. */
function kept(place: string, source: string): Buffer | undefined {
  let file: number;
  try {
    file = openSync(place, 'r');
  } catch (error) {
    codeOfSystem(error); // Whatever the system says: the program starts without.
    return undefined;
  }
  try {
    const { uid, mode } = fstatSync(file);
    if (process.getuid !== undefined && (uid !== process.getuid() || (mode & 0o022) !== 0)) return undefined;
    const bytes = readFileSync(file);
    const code = bytes.subarray(2 * DIGEST);
    return bytes.subarray(0, 2 * DIGEST).equals(digests(source, code)) ? code : undefined;
  } catch (error) {
    codeOfSystem(error);
    return undefined;
  } finally {
    closeSync(file);
  }
}

function keep(place: string, source: string, code: Buffer): void {
  const own = `${place}.${process.pid}`;
  try {
    mkdirSync(dirname(place), { recursive: true, mode: 0o700 });
    writeFileSync(own, Buffer.concat([digests(source, code), code]), { mode: 0o600, flag: 'wx' });
    renameSync(own, place); // At once, for whoever starts meanwhile.
  } catch (error) {
    codeOfSystem(error); // A full or closed disk: the next start makes the code anew.
  }
}

function digests(source: string, code: Uint8Array): Buffer {
  return Buffer.concat([source, code].map((part) => createHash('sha256').update(part).digest()));
}
