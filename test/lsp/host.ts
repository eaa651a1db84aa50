/**
 * Where a server runs: in a process of its own as an editor starts it, or in this one, which takes no time to start.
 */

import { type ChildProcess, spawn } from 'node:child_process';
import { PassThrough, type Readable, type Writable } from 'node:stream';

export interface Host {
  readonly input: Writable;
  readonly output: Readable;
  /** Its exit status; null where a signal ended it. */
  readonly ended: Promise<number | null>;
  readonly process: ChildProcess | undefined;
}

export const SERVER = [process.execPath, 'dist/server.cjs', '--stdio'] as const;

export function spawned(command: readonly string[] = SERVER, environment: Readonly<Record<string, string>> = {}): Host {
  const [file = '', ...args] = command;
  const child = spawn(file, args, { stdio: ['pipe', 'pipe', 'inherit'], env: { ...process.env, ...environment } });
  return {
    input: child.stdin,
    output: child.stdout,
    ended: new Promise((resolve) => child.once('exit', resolve)),
    process: child,
  };
}

/** The same server, but for how a process starts and ends. */
export async function inThisProcess(): Promise<Host> {
  const { serveOverStreams } = await import('../../server/src/lsp/on-node.ts');
  const [input, output] = [new PassThrough(), new PassThrough()];
  const ended = new Promise<number>((end) => serveOverStreams({ input, output, end }, SERVER[1]));
  return { input, output, ended, process: undefined };
}
