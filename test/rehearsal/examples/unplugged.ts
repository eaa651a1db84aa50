// A camera is unplugged and plugged in again.
import assert from 'node:assert/strict';
import { existsSync } from 'node:fs';
import { it } from 'mocha';
import type { House } from '../house.ts';
import { hashOf } from '../outage.ts';

export function unplugged(house: () => House): void {
  it('goes on recording when a camera is unplugged and plugged in again, and overwrites nothing', async () => {
    const { processes } = await house().recorder();
    const { all, whole, others, begunAnew } = await house().outage();
    for (const path of all) assert.ok(existsSync(path), path);
    for (const [path, hash] of whole) assert.equal(hashOf(path), hash, path);
    assert.ok(whole.size > 0 && others.length > 0);
    assert.deepEqual(
      begunAnew.map(({ unit }) => unit.name),
      [],
    );
    // It was restarted with its password.
    assert.deepEqual(processes.seen, []);
  });
}
