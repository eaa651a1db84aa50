/** The time from the start of a process to its first answer. */

import { spawnSync } from 'node:child_process';
import { dirname } from 'node:path';
import { performance } from 'node:perf_hooks';
import { Client } from '../lsp/client.ts';
import { PATIENCE } from './keystrokes.ts';
import { type Spread, spread } from './spread.ts';

const STARTS = 11;
const CHECKS = 7;
/** The first start keeps compiled code for those that come, once it has run so long; ms. */
const SETTLED = 2000;

/** Of a language server: to the first diagnostics of one open file, which is on disk too; ms. */
export async function firstProblems(command: readonly string[], path: string, text: string): Promise<Spread> {
  const starts: number[] = [];
  for (let i = 0; i <= STARTS; i++) {
    const begun = performance.now();
    const client = await Client.start(command);
    await client.diagnostics(await client.open(path, text), undefined, PATIENCE);
    if (i > 0) starts.push(performance.now() - begun);
    else await new Promise((resolve) => setTimeout(resolve, SETTLED));
    await client.stop();
  }
  return spread(starts);
}

/** Of the command line: to the end of `check` of the folder of a file; ms. */
export function wholeCheck(command: readonly string[], path: string): Spread {
  return ended([...command, 'check', dirname(path)]);
}

/** Of Node with an empty program, which no first answer can be quicker than; ms. */
export function bareNode(node: string): Spread {
  return ended([node, '-e', '0']);
}

function ended([program = '', ...words]: readonly string[]): Spread {
  const once = (): number => {
    const begun = performance.now();
    const { status, stderr } = spawnSync(program, words, { encoding: 'utf8' });
    // A check that finds an error ends with 1.
    if (status !== 0 && status !== 1) throw new Error(`${words.join(' ')} ended with ${String(status)}: ${stderr}`);
    return performance.now() - begun;
  };
  return spread(Array.from({ length: CHECKS + 1 }, once).slice(1));
}
