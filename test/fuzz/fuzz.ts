/**
 * Tries texts at random and then edits, and ends at the first that does harm:
 *
 *   npm run fuzz -- --seconds 60 --seed 1     half of the time for each
 *   npm run fuzz -- --edits 50000 --seed 1    so many edits, and no texts
 */

import { parseArgs } from 'node:util';
import { search, shownFailure, shrink } from './search.ts';
import { searchSequences, shownSequence, shrinkSequence } from './sequence.ts';

const { values } = parseArgs({
  options: { seconds: { type: 'string', default: '60' }, edits: { type: 'string' }, seed: { type: 'string' } },
});
const seed = values.seed === undefined ? Date.now() % 1_000_000_000 : Number(values.seed);
const seconds = Number(values.seconds);
const most = values.edits === undefined ? undefined : Number(values.edits);
if (!Number.isSafeInteger(seed) || !(seconds > 0) || !(most === undefined || most > 0)) {
  console.error('--seconds and --edits take a number, and --seed a whole number.');
  process.exit(2);
}

/** Whether half of the time is left, counted from now. */
function half(): () => boolean {
  const end = Date.now() + seconds * 500;
  return () => Date.now() < end;
}

if (most === undefined) {
  const { tried, failure } = search(seed, half());
  console.log(`${tried} inputs from seed ${seed}`);
  if (failure !== undefined) {
    console.log(shownFailure(shrink(failure)));
    process.exit(1);
  }
}
const { edits, failure } = searchSequences(seed, most === undefined ? half() : (done) => done < most);
console.log(`${edits} edits from seed ${seed}`);
if (failure !== undefined) {
  console.log(shownSequence(shrinkSequence(failure)));
  process.exitCode = 1;
}
