import { equal } from 'node:assert/strict';
import { spawnSync } from 'node:child_process';
import { buildSync } from 'esbuild';

/** Whether V8 has other settings afterwards: its tag of cached code is derived from them (Node, `v8`). */
const PROGRAM = `
import { cachedDataVersionTag } from 'node:v8';
import { compileBriefly } from './server/src/machine/compile-briefly.ts';
const before = cachedDataVersionTag();
compileBriefly();
process.stdout.write(String(cachedDataVersionTag() !== before));
`;

describe('settings of V8', () => {
  it('are changed where it has no compiler for brief code, and V8 knows them all', () => {
    const {
      outputFiles: [bundle],
    } = buildSync({
      stdin: { contents: PROGRAM, resolveDir: '.' },
      bundle: true,
      platform: 'node',
      write: false,
    });
    const { status, stdout, stderr } = spawnSync(process.execPath, ['-e', bundle?.text ?? ''], { encoding: 'utf8' });
    equal(stderr, '');
    equal(status, 0);
    const knowsMaglev = Number.parseInt(process.versions.node, 10) >= 22;
    equal(stdout, String(!knowsMaglev));
  });
});
