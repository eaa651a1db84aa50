/** `npm run fuzz -- --seconds 60 --seed 1`: tries texts at random, and ends at the first that does harm. */

import { parseArgs } from 'node:util';
import { search, shownFailure, shrink } from './search.ts';

const { values } = parseArgs({ options: { seconds: { type: 'string', default: '60' }, seed: { type: 'string' } } });
const seed = values.seed === undefined ? Date.now() % 1_000_000_000 : Number(values.seed);
const seconds = Number(values.seconds);
if (!Number.isSafeInteger(seed) || !(seconds > 0)) {
  console.error('--seconds takes a number and --seed a whole number.');
  process.exit(2);
}

const { tried, failure } = search(seed, seconds * 1000);
console.log(`${tried} inputs from seed ${seed}`);
if (failure !== undefined) {
  console.log(shownFailure(shrink(failure)));
  process.exitCode = 1;
}
