/** What the first answer of a process takes: of the language server, of the command line, and of Node by itself. */

import { spawnSync } from 'node:child_process';
import { dirname } from 'node:path';
import { performance } from 'node:perf_hooks';
import { Client } from '../lsp/client.ts';
import { PATIENCE, type Spread, spread } from './measure.ts';

const STARTS = 7;
const CHECKS = 3;

/** All in ms, from the start of the process. */
export interface Cold {
  /** To the first diagnostics of one open file. */
  readonly server: Spread;
  /** To the end of `plumbline check`. */
  readonly check: Spread;
  /** Of Node with an empty program. */
  readonly node: Spread;
}

/** The file is on disk too. The first start of the server is left out: it keeps its code for those that come. */
export async function cold(server: readonly string[], program: string, path: string, text: string): Promise<Cold> {
  const starts: number[] = [];
  const nodes: number[] = [];
  for (let i = 0; i <= STARTS; i++) {
    const begun = performance.now();
    const client = await Client.start(server);
    await client.diagnostics(await client.open(path, text), undefined, PATIENCE);
    if (i > 0) starts.push(performance.now() - begun);
    await client.stop();
    nodes.push(timeOf(['-e', '0']));
  }
  const checks = Array.from({ length: CHECKS + 1 }, () => timeOf([program, 'check', dirname(path)])).slice(1);
  return { server: spread(starts), check: spread(checks), node: spread(nodes) };
}

function timeOf(words: readonly string[]): number {
  const begun = performance.now();
  const { status, stderr } = spawnSync(process.execPath, words, { encoding: 'utf8' });
  if (status !== 0) throw new Error(`${words.join(' ')} ended with ${String(status)}: ${stderr}`);
  return performance.now() - begun;
}
