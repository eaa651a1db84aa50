// A site that was edited equals one that is read afresh, whatever the edits were.
import assert from 'node:assert/strict';
import { describe, it } from 'mocha';
import { searchSequences, shownSequence, shrinkSequence } from './sequence.ts';

const SECONDS = 10;

describe('a site that is edited at random', () => {
  it('is told of as if it were read afresh after each edit', () => {
    const seed = Date.now() % 1_000_000_000;
    const { edits, failure } = searchSequences(seed, SECONDS * 1000);
    assert.ok(failure === undefined, failure === undefined ? '' : shownSequence(shrinkSequence(failure)));
    assert.ok(edits > 50, `only ${edits} edits were tried`);
  }).timeout(120_000);
});
