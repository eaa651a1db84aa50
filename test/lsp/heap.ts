/** The bytes that a server of ours has in use after garbage collection. */

import { existsSync, readFileSync, rmSync } from 'node:fs';
import { setTimeout } from 'node:timers/promises';
import type { Client } from './client.ts';

/** The server, with a file that it writes its use of memory to when asked. */
export const measuredServer = (file: string): readonly string[] => [
  'env',
  `HEAP_FILE=${file}`,
  process.execPath,
  '--expose-gc',
  '--require',
  './test/lsp/heap.cjs',
  'dist/server.cjs',
  '--stdio',
];

/** Bytes on the heap of a server that was started by `measuredServer(file)`. */
export async function heapOf(client: Client, file: string): Promise<number> {
  rmSync(file, { force: true });
  client.process.kill('SIGUSR2');
  while (!existsSync(file)) {
    if (client.process.exitCode !== null) throw new Error('the server has ended');
    await setTimeout(20);
  }
  return Number(readFileSync(file, 'utf8'));
}
