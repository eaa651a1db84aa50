import assert from 'node:assert/strict';
import { usableDisks } from '../../server/src/standards/raid.ts';

describe('Redundant disks', () => {
  // Redundancy as in md(4), read; formulas from memory. 4 disks of 8 TB: RAID 5 24 TB, RAID 6 and 10 16 TB.
  for (const [redundancy, disks, usable] of [
    ['none', 1, 1],
    ['none', 3, 3],
    ['mirror', 2, 1],
    ['mirror', 3, 1],
    ['raid5', 3, 2],
    ['raid5', 4, 3],
    ['raid6', 4, 2],
    ['raid6', 8, 6],
    ['raid10', 4, 2],
    ['raid10', 6, 3],
  ] as const) {
    it(`${redundancy} of ${disks} holds what ${usable} would`, () => {
      assert.equal(usableDisks(redundancy, disks), usable);
    });
  }

  for (const [redundancy, disks] of [
    ['none', 0],
    ['mirror', 1],
    ['raid5', 2],
    ['raid6', 3],
    ['raid10', 2],
    ['raid10', 5],
    ['none', 1.5],
  ] as const) {
    it(`${redundancy} is not made of ${disks}`, () => assert.equal(usableDisks(redundancy, disks), undefined));
  }
});
