import assert from 'node:assert/strict';
import { spawnSync } from 'node:child_process';

describe('What is made from the schemas and rules', () => {
  it('is as `npm run generate` would make it', () => {
    const { status, stderr } = spawnSync(process.execPath, ['--import', 'tsx', 'server/generate/index.ts', '--check'], {
      encoding: 'utf8',
    });
    assert.equal(status, 0, stderr);
  });
});
