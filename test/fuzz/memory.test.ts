// What is kept of a site does not grow with the number of its edits.
import assert from 'node:assert/strict';
import { execFile } from 'node:child_process';
import { promisify } from 'node:util';
import { describe, it } from 'mocha';

/**
 * Between the heap after four thousand edits, when most that is compiled once is, and that after ten thousand. Code
 * that is first used later takes about half of it; then the heap stays, as 22,000 edits showed. A single item that each
 * edit left behind would be five times that.
 */
const MOST_GROWTH = 2_000_000;

describe('ten thousand edits', () => {
  it('leave no more in memory than four thousand', async () => {
    const { stdout } = await promisify(execFile)(process.execPath, [
      '--expose-gc',
      '--import',
      'tsx',
      'test/fuzz/growth.ts',
    ]);
    const heaps = JSON.parse(stdout) as number[];
    assert.equal(heaps.length, 10);
    const growth = (heaps[9] ?? Infinity) - (heaps[3] ?? 0);
    assert.ok(growth < MOST_GROWTH, `it grows by ${growth} bytes in six thousand edits: ${heaps.join(', ')}`);
  });
});
