// Whatever is made costs no more than the site grows, so that neither a preview nor the server waits for it.
import assert from 'node:assert/strict';
import { execFile } from 'node:child_process';
import { promisify } from 'node:util';
import { OUTPUTS } from '../../server/src/make/outputs.ts';

/** How much more work a site of eight times the lines may be: sorting it is 10 times as much, its square 64 times. */
const MOST = 12;

describe('what is made', () => {
  it('costs as the site grows', async () => {
    const { stdout } = await promisify(execFile)(process.execPath, ['--import', 'tsx', 'test/make/growth.ts']);
    const counts = JSON.parse(stdout) as Readonly<Record<string, readonly [number, number]>>;
    assert.deepEqual(
      Object.keys(counts),
      OUTPUTS.map(({ kind }) => kind),
    );
    for (const [kind, [few, many]] of Object.entries(counts)) {
      assert.ok(few > 0, kind);
      assert.ok(many <= MOST * few, `${kind}: ${many} operations, where an eighth of the site takes ${few}`);
    }
  });
});
