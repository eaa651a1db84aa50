// Whatever completion offers, taken with its defaults, adds no error: in houses, in the samples, and in sites at
// random. What is still to be typed is no error of what was offered: an empty tab stop, the length of a cable, the room
// there is.
import assert from 'node:assert/strict';
import { readFileSync, readdirSync } from 'node:fs';
import fc from 'fast-check';
import { addedAtPlaces, addedByReadyMade, words } from '../completed.ts';
import { houses } from '../houses/read.ts';
import type { Texts } from '../site.ts';
import { entriesOf, smallSite, textOf } from './small-site.ts';

function sample(name: string): Texts {
  const folder = new URL(`../../samples/${name}/`, import.meta.url);
  return Object.fromEntries(
    readdirSync(folder)
      .filter((file) => file.endsWith('.site.yaml'))
      .map((file) => [file, readFileSync(new URL(file, folder), 'utf8')]),
  );
}

const every =
  (step: number, from = 0) =>
  (text: string): number[] =>
    Array.from({ length: Math.ceil((text.length - from) / step) }, (_, index) => from + index * step);

describe('What completion offers', () => {
  const sites: readonly (readonly [string, Texts])[] = [
    ['an empty folder', {}],
    ...[...houses].map(([name, text]): [string, Texts] => [`the house ${name}`, { 'house.site.yaml': text }]),
    ['harrow-lane', sample('harrow-lane')],
    ['first-draft', sample('first-draft')],
  ];

  for (const [name, texts] of sites) {
    it(`adds nothing to ${name}, as ready-made items`, () => {
      const { tried, told } = addedByReadyMade(texts);
      assert.ok(tried > 25, `${tried} items`);
      assert.deepEqual(told.map(words), []);
    });
  }

  // Houses have much in common: of each, other places are tried.
  for (const [index, [name, text]] of [...houses].entries()) {
    it(`adds no error to the house ${name}, wherever something is missing, and by what comes first no warning`, () => {
      const { told } = addedAtPlaces({ 'house.site.yaml': text }, every(173, (index * 37) % 173), 30, 'warnings too');
      assert.deepEqual(told.map(words), []);
    });
  }

  it('adds no error to harrow-lane, wherever something is missing', () => {
    const { tried, told } = addedAtPlaces(sample('harrow-lane'), every(101, 5), 12);
    assert.ok(tried > 300, `${tried} offers`);
    assert.deepEqual(told.map(words), []);
  });

  it('adds no error to sites at random', () => {
    let all = 0;
    fc.assert(
      fc.property(smallSite(), fc.array(fc.nat(), { minLength: 4, maxLength: 4 }), (site, places) => {
        const texts = { 'site.site.yaml': textOf(entriesOf(site)) };
        const made = addedByReadyMade(texts);
        const there = addedAtPlaces(texts, (text) => places.map((place) => place % text.length), 12);
        all += made.tried + there.tried;
        assert.deepEqual([...made.told, ...there.told].map(words), []);
      }),
      { numRuns: 12 },
    );
    assert.ok(all > 500, `${all} offers`);
  });

  it('adds no error and no warning to sites of many shapes by what comes first', () => {
    let all = 0;
    fc.assert(
      fc.property(smallSite(), fc.array(fc.nat(), { minLength: 6, maxLength: 6 }), (site, places) => {
        const there = addedAtPlaces(
          { 'x.site.yaml': textOf(entriesOf(site)) },
          ({ length }) => places.map((at) => at % length),
          1,
          'warnings too',
        );
        all += there.tried;
        assert.deepEqual(there.told.map(words), []);
      }),
      { numRuns: 12, seed: 14 },
    );
    assert.ok(all > 20, `${all} offers`);
  });
});
