/** The houses of this folder, and mistaken ones. */

import assert from 'node:assert/strict';
import { readFileSync, readdirSync } from 'node:fs';
import type { Mistake } from './mistakes.ts';

const folder = new URL('./', import.meta.url);
const END = '.site.yaml';

/** Texts by name. */
export const houses: ReadonlyMap<string, string> = new Map(
  readdirSync(folder)
    .filter((name) => name.endsWith(END))
    .map((name) => [name.slice(0, -END.length), readFileSync(new URL(name, folder), 'utf8')]),
);

/** The house with the mistake in it. */
export function mistaken({ house, edits }: Mistake): string {
  let text = houses.get(house);
  for (const [right, wrong] of edits) {
    assert.equal(text?.split(right).length, 2, `there is one ${right} in ${house}`);
    text = text?.replace(right, () => wrong);
  }
  assert.ok(text !== undefined);
  return text;
}
