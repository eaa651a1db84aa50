// Houses that are right, in which nothing is found, and honest mistakes in them, each told once, at its cause. What is
// right and what is a mistake is judged by common practice.
import assert from 'node:assert/strict';
import { readFileSync, readdirSync } from 'node:fs';
import { mistakes } from './houses/mistakes.ts';
import { diagnosticsOf, spanAt } from './site.ts';

const folder = new URL('houses/', import.meta.url);
const END = '.site.yaml';
const houses = new Map(
  readdirSync(folder)
    .filter((name) => name.endsWith(END))
    .map((name) => [name.slice(0, -END.length), readFileSync(new URL(name, folder), 'utf8')]),
);

/** `rule words`, one for each finding, and what it says. */
function found(text: string): { readonly told: string; readonly message: string }[] {
  return diagnosticsOf({ ['house.site.yaml']: text }).map(({ rule, at, message }) => {
    const { start, end } = spanAt(at);
    return { told: `${rule.id} ${text.slice(start, end)}`, message };
  });
}

describe('Houses', () => {
  for (const [name, text] of houses) {
    describe(name, () => {
      it('has nothing to report, not even a hint', () => assert.deepEqual(found(text), []));

      for (const { is, told, edits } of mistakes.filter(({ house }) => house === name)) {
        it(`${is}: told once`, () => {
          let wrong = text;
          for (const [right, mistaken] of edits) {
            assert.equal(wrong.split(right).length, 2, `there is one ${right}`);
            wrong = wrong.replace(right, () => mistaken);
          }
          const all = found(wrong);
          assert.equal(all.map((one) => one.told).join(', '), told, all.map(({ message }) => message).join('\n'));
        });
      }
    });
  }
});
