import assert from 'node:assert/strict';
import { fnv1a, folded } from '../../server/src/standards/fnv.ts';

describe('FNV-1a of 64 bits (RFC 9923)', () => {
  // Test vectors of the standard, from memory.
  for (const [text, hash] of [
    ['', 0xcbf29ce484222325n],
    ['a', 0xaf63dc4c8601ec8cn],
    ['foobar', 0x85944171f73967e8n],
  ] as const) {
    it(`of '${text}'`, () => assert.equal(fnv1a(text), hash));
  }

  it('folds what is cut off into what stays', () => {
    assert.equal(folded(0x0123456789abcdefn, 32), 0x01234567n ^ 0x89abcdefn);
  });
});
