// No text whatever does harm: it neither throws, hangs nor is told of at a place that is not there, and fixes mend.
import assert from 'node:assert/strict';
import { describe, it } from 'mocha';
import { search, shownFailure, shrink } from './search.ts';

const SECONDS = 10;

describe('texts at random', () => {
  it('do no harm', () => {
    const seed = Date.now() % 1_000_000_000;
    const { tried, failure } = search(seed, SECONDS * 1000);
    assert.ok(failure === undefined, failure === undefined ? '' : shownFailure(shrink(failure)));
    assert.ok(tried > 20, `only ${tried} inputs were tried`);
  }).timeout(120_000);
});
