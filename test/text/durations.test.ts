/** Durations as people write them: checked by reading them back, and by a few written out by hand. */

import assert from 'node:assert/strict';
import fc from 'fast-check';
import { duration, runtime } from '../../server/src/text/words.ts';

const UNITS = new Map([
  ['d', 86_400_000],
  ['h', 3_600_000],
  ['min', 60_000],
  ['s', 1000],
  ['ms', 1],
]);

function read(text: string): number {
  return text.split(/ (?=\d)/).reduce((sum, part) => {
    const [amount, unit = ''] = part.split(' ');
    return sum + Number(amount) * (UNITS.get(unit) ?? NaN);
  }, 0);
}

describe('durations', () => {
  it('are whole numbers of the largest units, and decimals only of seconds', () => {
    const shown = [
      0, 40, 999, 2500, 59_999, 72_000, 3_599_600, 4_860_000, 6_600_000, 86_399_000, 90_000_000, 1_209_600_000,
    ];
    assert.deepEqual(shown.map(duration), [
      '0 ms',
      '40 ms',
      '999 ms',
      '2.5 s',
      '1 min',
      '1 min 12 s',
      '1 h',
      '1 h 21 min',
      '1 h 50 min',
      '1 d',
      '1 d 1 h',
      '14 d',
    ]);
  });

  it('read back, are off by half of what they are rounded to', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 4_000_000_000 }), fc.nat({ max: 20 }), (large, shift) => {
        const time = Math.floor(large / 2 ** shift);
        const step = time < 1000 ? 0 : time < 60_000 ? 10 : time < 3_600_000 ? 1000 : 60_000;
        const text = duration(time);
        assert.ok(Math.abs(read(text) - time) <= step / 2 + 1e-6, `${time}: ${text}`);
        assert.match(text, /^(\d+ (d|h|min|s)( |$)){1,3}$|^\d+(\.\d+)? s$|^\d+ ms$/);
      }),
    );
  });

  it('of a battery never say more than it lasts', () => {
    assert.deepEqual([0, 900, 59_999, 3_599_999, 4_919_999].map(runtime), [
      '0 s',
      '0 s',
      '59 s',
      '59 min',
      '1 h 21 min',
    ]);
  });
});
