// No text does harm: nothing throws, hangs or is reported at a place that does not exist, and fixes mend.
import assert from 'node:assert/strict';
import { describe, it } from 'mocha';
import { search, shownFailure, shrink } from './search.ts';

/** A fixed seed, so that only a change of the code makes it fail; `npm run fuzz` tries others. */
const SEED = 20_261_125;
const INPUTS = 100;

describe('texts at random', () => {
  it('do no harm', () => {
    const { tried, failure } = search(SEED, (done) => done < INPUTS);
    assert.ok(failure === undefined, failure === undefined ? '' : shownFailure(shrink(failure)));
    assert.equal(tried, INPUTS);
  });
});
