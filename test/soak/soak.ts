/**
 * Lets random clients work on several sites for long, and ends with 1 at the first thing that does not hold:
 *
 *   npm run soak -- --minutes 30 --seed 1
 *
 * Each has a server of its own. After some dozens of actions what is shown must be what a fresh check finds. In each
 * round all sites are opened, worked on, closed and deleted; what the server then has in use must not grow.
 */

import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { Random } from '../fuzz/random.ts';
import { Client } from '../lsp/client.ts';
import { heapOf, measuredServer } from '../lsp/heap.ts';
import { RandomClient } from './random-client.ts';

const CLIENTS = 2;
/** Between two comparisons. */
const ACTIONS = 60;
const COMPARISONS = 10;
/** Rounds until all code is compiled and all that is kept once is there. */
const WARM = 5;
/** Bytes without machine code. A site that is left behind in every round would be more than a hundred thousand each. */
const MOST_GROWTH = 3_000_000;

const { values } = parseArgs({ options: { minutes: { type: 'string', default: '30' }, seed: { type: 'string' } } });
const minutes = Number(values.minutes);
const seed = values.seed === undefined ? Date.now() % 1_000_000_000 : Number(values.seed);
if (!(minutes > 0) || !Number.isSafeInteger(seed)) {
  console.error('--minutes takes a number, and --seed a whole number.');
  process.exit(2);
}
const end = Date.now() + minutes * 60_000;
const root = mkdtempSync(join(tmpdir(), 'plumbline-soak-'));
console.log(`${CLIENTS} clients for ${minutes} min from seed ${seed}`);
try {
  await Promise.all(Array.from({ length: CLIENTS }, (_, index) => soak(index)));
} finally {
  rmSync(root, { recursive: true, force: true });
}

async function soak(index: number): Promise<void> {
  const heap = join(root, `heap-${index}`);
  const own = join(root, `client-${index}`);
  const client = await Client.start(measuredServer(heap), { workspace: [join(own, 'home')] });
  client.process.once('exit', (code) => {
    if (Date.now() < end) throw new Error(`the server of client ${index} has ended with ${code}`);
  });
  const heaps: number[] = [];
  for (let round = 0; Date.now() < end || round <= WARM; round++) {
    const random = new Random(seed + index * 1_000_000 + round);
    // Of a site that is gone another may come at its place.
    const inside = [1, 2, 3].map((at) => join(own, 'home', `site-${at}`));
    const outside = [1, 2, 3].map((at) => join(own, `other ${round % 2}`, `site-${at}`));
    const person = new RandomClient(client, random, inside, outside);
    await person.begin();
    for (let left = COMPARISONS; left > 0; left--) {
      for (let action = 0; action < ACTIONS; action++) await person.act();
      await person.hold();
    }
    await person.end();
    heaps.push(await heapOf(client, heap));
    const { edits, questions, cancelled, findings } = person.counts;
    console.log(
      `client ${index}, round ${round}: ${edits} edits, ${questions} questions, ${cancelled} cancelled, ` +
        `${findings} findings as afresh; ${((heaps.at(-1) ?? 0) / 1e6).toFixed(1)} MB in use`,
    );
  }
  await client.stop();
  const growth = (heaps.at(-1) ?? Infinity) - (heaps[WARM] ?? 0);
  console.log(`client ${index}: ${(growth / 1e6).toFixed(1)} MB more in use than after ${WARM + 1} rounds`);
  if (growth > MOST_GROWTH) process.exitCode = 1;
}
