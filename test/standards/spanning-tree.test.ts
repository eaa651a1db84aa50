import assert from 'node:assert/strict';
import fc from 'fast-check';
import { DEFAULT_PRIORITY, pathCost } from '../../server/src/standards/spanning-tree.ts';

describe('Spanning tree (IEEE 802.1D-2004)', () => {
  // Table 17-3 as transcribed in Open vSwitch, lib/rstp.c, rstp_convert_speed_to_cost (secondary).
  for (const [speed, cost] of [
    [1e6, 20_000_000],
    [1e7, 2_000_000],
    [1e8, 200_000],
    [1e9, 20_000],
    [1e10, 2000],
    [1e11, 200],
    [1e12, 20],
    [1e13, 2],
  ] as const) {
    it(`costs ${cost} at ${speed / 1e6} Mb/s`, () => assert.equal(pathCost(speed), cost));
  }

  // By the formula, which is from memory.
  it('costs 8000 at 2.5 Gb/s and 4000 at 5 Gb/s', () => {
    assert.equal(pathCost(2.5e9), 8000);
    assert.equal(pathCost(5e9), 4000);
  });

  it('stays between 1 and 200 000 000, and never grows with speed', () => {
    assert.equal(pathCost(1), 200_000_000);
    assert.equal(pathCost(1e15), 1);
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1e12 }), fc.integer({ min: 1, max: 1e12 }), (a, b) => {
        assert.ok(pathCost(Math.max(a, b)) <= pathCost(Math.min(a, b)));
      }),
    );
  });

  it('has priority 32768 by default', () => assert.equal(DEFAULT_PRIORITY, 32_768)); // Table 17-2, from memory
});
