/** What the first answer of a process takes, from its start: of the language server, of the command line, of Node by itself. */

import { spawnSync } from 'node:child_process';
import { dirname } from 'node:path';
import { performance } from 'node:perf_hooks';
import { Client } from '../lsp/client.ts';
import { PATIENCE, type Spread, spread } from './measure.ts';

const STARTS = 7;
const CHECKS = 3;

/** To the first diagnostics of one open file, which is on disk too; beside that, Node with an empty program. All in ms. */
export async function coldServer(
  command: readonly string[],
  path: string,
  text: string,
): Promise<{ readonly server: Spread; readonly node: Spread }> {
  const starts: number[] = [];
  const nodes: number[] = [];
  for (let i = 0; i <= STARTS; i++) {
    const begun = performance.now();
    const client = await Client.start(command);
    await client.diagnostics(await client.open(path, text), undefined, PATIENCE);
    starts.push(performance.now() - begun);
    await client.stop();
    nodes.push(timeOf(['-e', '0']));
  }
  return { server: spread(starts.slice(1)), node: spread(nodes.slice(1)) };
}

/** To the end of `plumbline check` of the folder of a file, in ms. */
export function coldCheck(program: string, path: string): Spread {
  return spread(Array.from({ length: CHECKS + 1 }, () => timeOf([program, 'check', dirname(path)])).slice(1));
}

// The first start of each is left out: it keeps its code for those that come.
function timeOf(words: readonly string[]): number {
  const begun = performance.now();
  const { status, stderr } = spawnSync(process.execPath, words, { encoding: 'utf8' });
  if (status !== 0) throw new Error(`${words.join(' ')} ended with ${String(status)}: ${stderr}`);
  return performance.now() - begun;
}
