/**
 * The place of a lab: its network namespaces, its folder, and everything that must be removed when it ends.
 *
 * Names contain the id of the process that made them, so that two runs do not clash, and a later run can clear away
 * the leftovers of one that was killed.
 */

import { mkdtempSync, readFileSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { run, runAnyway } from './run.ts';

/** For `nice`: on a machine with other work to do the switches and senders go first, so that no frame is lost. */
export const URGENT = ['-n', '-15'];

const PREFIX = 'plumblab';
let count = 0;

export class Place {
  readonly folder: string;
  private readonly name: string;
  private readonly namespaces: string[] = [];
  private readonly endings: (() => void)[] = [];
  private readonly endAtExit = (): void => this.clear();

  constructor() {
    this.name = `${PREFIX}-${process.pid}-${++count}`;
    this.folder = mkdtempSync(join(tmpdir(), `${this.name}-`));
    process.once('exit', this.endAtExit);
  }

  /** Makes network namespaces; the names are what is asked for after the name of this place. */
  async addNamespaces(names: readonly string[]): Promise<void> {
    const full = names.map((name) => this.namespace(name));
    this.namespaces.push(...full);
    await run('ip', ['-batch', '-'], { input: full.map((name) => `netns add ${name}\n`).join('') });
  }

  namespace(name: string): string {
    return `${this.name}-${name}`;
  }

  /** `end` is called when the place is cleared, the last one first. */
  atEnd(end: () => void): void {
    this.endings.push(end);
  }

  /** Removes everything that was made. */
  clear(): void {
    process.off('exit', this.endAtExit);
    for (const end of this.endings.splice(0).reverse()) end();
    for (const namespace of this.namespaces.splice(0)) runAnyway('ip', ['netns', 'delete', namespace]);
    rmSync(this.folder, { recursive: true, force: true });
  }
}

/** Clears away the leftovers of runs that were killed. */
export function clearLeftovers(namespaces: readonly string[]): void {
  for (const folder of readdirSync(tmpdir()).filter(isLeft)) {
    const path = join(tmpdir(), folder);
    for (const file of readdirSync(path).filter((name) => name.endsWith('.pid'))) {
      const pid = Number(readFileSync(join(path, file), 'utf8'));
      if (isOf(pid, path)) process.kill(pid, 'SIGKILL');
    }
    for (const mount of mountsBelow(path)) runAnyway('umount', ['--lazy', mount]);
    // Another group of tests may be clearing it away as well.
    rmSync(path, { recursive: true, force: true, maxRetries: 5, retryDelay: 200 });
  }
  for (const namespace of namespaces.filter(isLeft)) runAnyway('ip', ['netns', 'delete', namespace]);
}

/** Disks of their own that a test has mounted in its folder (proc(5), mounts). */
function mountsBelow(path: string): string[] {
  return readFileSync('/proc/mounts', 'utf8')
    .split('\n')
    .map((line) => line.split(' ')[1] ?? '')
    .filter((at) => at.startsWith(`${path}/`));
}

function isLeft(name: string): boolean {
  const [prefix, pid] = name.split('-');
  return prefix === PREFIX && !isRunning(Number(pid));
}

function isRunning(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch {
    return false;
  }
}

/** Whether a process was started with the path of a folder, and so is the one whose number the folder holds. */
function isOf(pid: number, path: string): boolean {
  try {
    return readFileSync(`/proc/${pid}/cmdline`, 'utf8').includes(path);
  } catch {
    return false;
  }
}
