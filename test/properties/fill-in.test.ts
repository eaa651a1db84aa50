// What is filled in for `auto` checks clean: right houses, in which addresses, groups and ports are written as `auto`,
// are without errors and warnings once they are filled in, and say what is left.
import assert from 'node:assert/strict';
import fc from 'fast-check';
import { check } from '../../server/src/check.ts';
import { fillIn } from '../../server/src/features/actions/fill-in.ts';
import { houses } from '../houses/read.ts';
import { type Texts, edited, folderOf } from '../site.ts';

const FILE = 'house.site.yaml';

/** Values that stand at one place only, so that nothing else refers to them. */
function valuesIn(text: string): { readonly start: number; readonly end: number }[] {
  return [...text.matchAll(/\b(?:address|group|port): ([\d.]+)(?=[,} \n])/g)].flatMap(
    ({ 0: whole, 1: value = '', index }) => {
      const isAddress = whole.startsWith('address');
      // The port of a route is a name.
      if (/\bto: [^\n}]*$/.test(text.slice(0, index))) return [];
      if (isAddress && text.split(value).length > 2) return [];
      const end = index + whole.length;
      return [{ start: end - value.length, end }];
    },
  );
}

describe('What is filled in', () => {
  for (const [name, text] of houses) {
    it(`checks clean in the house ${name}`, () => {
      const values = valuesIn(text);
      fc.assert(
        fc.property(fc.subarray(values, { minLength: Math.min(1, values.length) }), (blank) => {
          let written = text;
          for (const { start, end } of blank.toReversed())
            written = `${written.slice(0, start)}auto${written.slice(end)}`;
          const texts: Texts = { [FILE]: written };
          const { edits, filled, left, files } = fillIn(check(folderOf(texts)));
          assert.equal(filled.length + left.length, blank.length, written);
          const after = edited(texts, edits)[FILE] ?? '';
          assert.equal(after, files[0]?.text);
          assert.equal(after.split(/: auto\b/).length - 1, left.length);
          const told = check(folderOf({ [FILE]: after }))
            .diagnostics.filter(({ severity }) => severity === 'error' || severity === 'warning')
            .map(({ rule, message }) => `${rule.id}: ${message}`);
          if (left.length === 0) assert.deepEqual(told, [], after);
        }),
        { numRuns: 4 },
      );
    });
  }
});
