import assert from 'node:assert/strict';
import { readFileSync, readdirSync } from 'node:fs';
import { groupOf } from './groups.ts';

const ROOT = new URL('../', import.meta.url);

describe('Groups of tests', () => {
  it('that need nothing but Node and git have no test that may be skipped', () => {
    const files = readdirSync(ROOT, { recursive: true, encoding: 'utf8' })
      .filter((path) => path.endsWith('.test.ts'))
      .filter((path) => groupOf(path.replaceAll('\\', '/')).bare === true);
    assert.ok(files.length > 100);
    const skipping = files.filter((path) =>
      /from '.*\bavailability\.ts'/.test(readFileSync(new URL(path, ROOT), 'utf8')),
    );
    assert.deepEqual(skipping, [], 'they belong to the group programs of test/run/groups.ts');
  });
});
