// No text does harm: nothing throws, hangs or is reported at a place that does not exist, and fixes mend.
import assert from 'node:assert/strict';
import { describe, it } from 'mocha';
import { search, shownFailure, shrink } from './search.ts';

/** The same each time, so that a change is what makes it fail; `npm run fuzz` looks further. */
const SEED = 20_261_125;
const INPUTS = 100;

describe('texts at random', () => {
  it('do no harm', () => {
    const { tried, failure } = search(SEED, (done) => done < INPUTS);
    assert.ok(failure === undefined, failure === undefined ? '' : shownFailure(shrink(failure)));
    assert.equal(tried, INPUTS);
  });
});
