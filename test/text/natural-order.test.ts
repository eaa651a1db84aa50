import assert from 'node:assert/strict';
import fc from 'fast-check';
import { describe, it } from 'mocha';
import { naturally } from '../../server/src/text/natural-order.ts';

describe('the order in which a person looks for names', () => {
  it('counts where there are numbers, and minds no capitals', () => {
    const sorted = ['core/2', 'core/10', 'Core/11', 'core/a', 'F-01', 'F-1', 'F-2', 'f-03', 'stable/1'];
    assert.deepEqual([...sorted].reverse().sort(naturally), sorted);
  });

  it('is one order, whatever the names are', () => {
    const name = fc.oneof(fc.string(), fc.stringMatching(/^[a-bA-B]?[0-9]{0,3}[a-b/-]?[0-9]{0,2}$/));
    fc.assert(
      fc.property(name, name, name, (a, b, c) => {
        assert.equal(Math.sign(naturally(a, b)), -Math.sign(naturally(b, a)) + 0);
        assert.equal(naturally(a, b) === 0, a === b);
        if (naturally(a, b) < 0 && naturally(b, c) < 0) assert.ok(naturally(a, c) < 0);
      }),
      { numRuns: 2000 },
    );
  });
});
