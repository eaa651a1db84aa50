// A reader that has had enough: what `plumbline report | head -1` does to a program.
import assert from 'node:assert/strict';
import { spawnSync } from 'node:child_process';
import { unavailable } from '../availability.ts';
import { program } from './run.ts';

describe('plumbline, where nobody reads on', () => {
  for (const words of ['make --help', 'report samples/harrow-lane --format json', 'check samples/first-draft'])
    it(`ends quietly: ${words}`, function () {
      // The reader is gone long before anything is written.
      const { stdout, stderr, error } = spawnSync(
        'bash',
        ['-c', `"$0" "$1" ${words} | true; echo "\${PIPESTATUS[0]}"`, process.execPath, program],
        {
          encoding: 'utf8',
        },
      );
      if (error !== undefined) unavailable(this, 'bash is needed');
      assert.deepEqual([stdout, stderr], ['141\n', ''], 'as SIGPIPE ends other programs: 128 + 13, POSIX 2.8.2');
    });
});
