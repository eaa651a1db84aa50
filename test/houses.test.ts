// Right houses, which have no findings, and honest mistakes in them, each reported once, at its cause. Common practice
// decides what is right and what is a mistake.
import assert from 'node:assert/strict';
import { mistakes } from './houses/mistakes.ts';
import { houses, mistaken } from './houses/read.ts';
import { diagnosticsOf, spanAt } from './site.ts';

/** `rule words` for each finding, with its message. */
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

      for (const mistake of mistakes.filter(({ house }) => house === name)) {
        it(`${mistake.is}: reported once`, () => {
          const all = found(mistaken(mistake));
          assert.equal(
            all.map((one) => one.told).join(', '),
            mistake.told,
            all.map(({ message }) => message).join('\n'),
          );
        });
      }
    });
  }
});
