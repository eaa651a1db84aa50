// A reader that has had enough: what `plumbline report | head -1` does to a program.
import assert from 'node:assert/strict';
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { unavailable } from '../availability.ts';
import { program } from './run.ts';

describe('plumbline, where nobody reads on', () => {
  for (const words of ['make --help', 'report samples/harrow-lane --format json', 'check samples/first-draft'])
    it(`ends quietly: ${words}`, function () {
      // The reader is gone before the program starts.
      const gone = join(mkdtempSync(join(tmpdir(), 'plumbline-reader-')), 'gone');
      const { stdout, stderr, error } = spawnSync(
        'bash',
        [
          '-c',
          `(until [[ -e $2 ]]; do sleep 0.01; done; exec "$0" "$1" ${words}) | { exec <&-; : >"$2"; }
           echo "\${PIPESTATUS[0]}"`,
          process.execPath,
          program,
          gone,
        ],
        { encoding: 'utf8' },
      );
      rmSync(dirname(gone), { recursive: true });
      if (error !== undefined) unavailable(this, 'bash is needed');
      assert.deepEqual([stdout, stderr], ['141\n', ''], 'as SIGPIPE ends other programs: 128 + 13, POSIX 2.8.2');
    });
});
