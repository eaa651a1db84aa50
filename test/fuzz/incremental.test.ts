// An edited site equals one that is read from scratch, after any edits.
import assert from 'node:assert/strict';
import { describe, it } from 'mocha';
import { KeptSite, compare } from './incremental.ts';
import { searchSequences, shownSequence, shrinkSequence } from './sequence.ts';

/** A fixed seed, so that only a change of the code makes it fail; `npm run fuzz` tries others. */
const SEED = 20_261_125;
const EDITS = 150;

/** Edits that once failed, each from one text to another. */
const ONCE_WRONG: Readonly<Record<string, readonly [string, string]>> = {
  'a stray line between an item and hyphens at its indentation': [
    'cables:\n  a: {group: \n239.192.20.31}\n  - {from: cor',
    'cables:\n  a: {group: \n  - {from: cor',
  ],
};

describe('a site that is edited', () => {
  for (const [name, [before, after]] of Object.entries(ONCE_WRONG)) {
    it(`is reported as if it were read afresh: ${name}`, () => {
      const kept = new KeptSite();
      for (const text of [before, after, before]) compare(kept, { 'all.site.yaml': text }, 1);
    });
  }
});

describe('a site that is edited at random', () => {
  it('is reported as if it were read afresh after each edit', () => {
    const { edits, failure } = searchSequences(SEED, (done) => done < EDITS);
    assert.ok(failure === undefined, failure === undefined ? '' : shownSequence(shrinkSequence(failure)));
    assert.ok(edits >= EDITS);
  });
});
