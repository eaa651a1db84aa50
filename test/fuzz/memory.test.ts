// The memory of a site does not grow with the number of its edits.
import assert from 'node:assert/strict';
import { execFile } from 'node:child_process';
import { promisify } from 'node:util';
import { describe, it } from 'mocha';

/**
 * Between the heap after four hundred edits, when most that is compiled once is, and that after twelve hundred. Code
 * that is first used later takes a third of it. A single item that each edit left behind would be three times that.
 */
const MOST_GROWTH = 400_000;

/** Code that is optimized, or dropped and compiled again, would take more memory than a leak. */
const SAME_CODE = ['--no-opt', '--no-sparkplug', '--no-flush-bytecode'];

describe('twelve hundred edits', () => {
  it('leave no more in memory than four hundred', async () => {
    const { stdout } = await promisify(execFile)(process.execPath, [
      '--expose-gc',
      ...SAME_CODE,
      '--import',
      'tsx',
      'test/fuzz/growth.ts',
    ]);
    const heaps = JSON.parse(stdout) as number[];
    assert.equal(heaps.length, 12);
    const growth = (heaps[11] ?? Infinity) - (heaps[3] ?? 0);
    assert.ok(growth < MOST_GROWTH, `it grows by ${growth} bytes in eight hundred edits: ${heaps.join(', ')}`);
  });
});
