// Every refactoring that the samples are offered.
import assert from 'node:assert/strict';
import { readFileSync, readdirSync } from 'node:fs';
import type { Texts } from '../../site.ts';
import { assertSameSite, assertSound, everyRefactoring } from './refactored.ts';

function sample(name: string): Texts {
  return Object.fromEntries(
    readdirSync(`samples/${name}`)
      .filter((file) => file.endsWith('.site.yaml'))
      .map((file) => [`file:///${name}/${file}`, readFileSync(`samples/${name}/${file}`, 'utf8')]),
  );
}

describe('Refactorings of the samples', () => {
  for (const [name, expected] of [
    ['harrow-lane', { Move: 15, Split: 3, Write: 7 }],
    ['first-draft', { 'Move': 4, 'Write': 5, 'Re-send': 1 }],
  ] as const) {
    it(`leave ${name} as it is, or with one copy from the camera`, () => {
      const texts = sample(name);
      const sorts: string[] = [];
      for (const {
        offered: { title },
        after,
      } of everyRefactoring(texts)) {
        sorts.push(title.split(' ')[0] ?? '');
        if (title.startsWith('Re-send')) assertSound(texts, after);
        else assertSameSite(texts, after);
      }
      for (const [sort, least] of Object.entries(expected)) {
        assert.ok(sorts.filter((own) => own === sort).length >= least, `${sort}: ${sorts.join(' ')}`);
      }
    });
  }
});
