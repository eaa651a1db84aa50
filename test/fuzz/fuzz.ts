/** `npm run fuzz -- --seconds 60 --seed 1`: tries texts and then edits at random, and ends at the first that does harm. */

import { parseArgs } from 'node:util';
import { search, shownFailure, shrink } from './search.ts';
import { searchSequences, shownSequence, shrinkSequence } from './sequence.ts';

const { values } = parseArgs({ options: { seconds: { type: 'string', default: '60' }, seed: { type: 'string' } } });
const seed = values.seed === undefined ? Date.now() % 1_000_000_000 : Number(values.seed);
const seconds = Number(values.seconds);
if (!Number.isSafeInteger(seed) || !(seconds > 0)) {
  console.error('--seconds takes a number and --seed a whole number.');
  process.exit(2);
}

const half = seconds * 500;
const { tried, failure } = search(seed, half);
console.log(`${tried} inputs from seed ${seed}`);
if (failure !== undefined) {
  console.log(shownFailure(shrink(failure)));
  process.exit(1);
}
const { edits, failure: failed } = searchSequences(seed, half);
console.log(`${edits} edits from seed ${seed}`);
if (failed !== undefined) {
  console.log(shownSequence(shrinkSequence(failed)));
  process.exitCode = 1;
}
