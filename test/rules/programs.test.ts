import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';

describe('Examples of the rules', () => {
  for (const program of ['programs/server.cjs', 'programs/plumbline.cjs', 'browser/server.js']) {
    it(`are no part of dist/${program}`, () => {
      const marks = /^#\s+\^+ .*$/m.exec(readFileSync(new URL(`../../dist/${program}`, import.meta.url), 'utf8'));
      assert.equal(marks?.[0], undefined);
    });
  }
});
