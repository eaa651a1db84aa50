/**
 * What is made at every edit has the same shape each time. Where an object gets keys after others are spread into it,
 * V8 up to 11 (Node 20) makes a hidden class for each single object, and so do all versions for a getter in a literal:
 * that takes ten times as long, what reads them is slow as well, and the classes keep alive what they describe.
 */

import assert from 'node:assert/strict';
import { readFileSync, readdirSync } from 'node:fs';
import { setFlagsFromString } from 'node:v8';
import { runInThisContext } from 'node:vm';
import { check } from '../../server/src/check.ts';
import type { Checked } from '../../server/src/lint/check.ts';
import { SiteFolder } from '../../server/src/site/folder.ts';

setFlagsFromString('--allow-natives-syntax');
const haveSameShape = runInThisContext('(a, b) => %HaveSameMap(a, b)') as (a: object, b: object) => boolean;

describe('objects that are made at every edit', () => {
  it('have the shape of those before', () => {
    const edited = new EditedSite('samples/first-draft', /speed: 1 Gb\/s/);
    // Until then V8 has seen all kinds of values that their keys have.
    for (let turn = 0; turn < 10; turn++) edited.next();
    const [before, after] = [edited.next(), edited.next()];
    const differing = new Set<string>();
    for (const [path, a, b] of pairs(before, after)) if (!haveSameShape(a, b)) differing.add(path);
    assert.deepEqual([...differing], []);
  });
});

/** A site in which one word is edited again and again. */
class EditedSite {
  private readonly folder = new SiteFolder();
  private readonly uri: string;
  private readonly texts: readonly [string, string];
  private checked: Checked | undefined;
  private turn = 0;

  constructor(folder: string, word: RegExp) {
    const files = readdirSync(folder).filter((name) => name.endsWith('.site.yaml'));
    for (const name of files) this.folder.set(name, readFileSync(`${folder}/${name}`, 'utf8'));
    const file = this.folder.files.find(({ text }) => word.test(text));
    assert.ok(file !== undefined);
    this.uri = file.uri;
    this.texts = [file.text, file.text.replace(word, 'speed: 2.5 Gb/s')];
  }

  next(): Pick<Checked, 'plan' | 'diagnostics'> {
    this.folder.set(this.uri, this.texts[(this.turn++ % 2) as 0 | 1]);
    this.checked = check(this.folder, this.checked);
    const { plan, diagnostics } = this.checked;
    return { plan, diagnostics };
  }
}

/** The objects at the same places of two values, with the keys that lead there. */
function* pairs(a: object, b: object, path = '', seen = new Set<object>()): Generator<[string, object, object]> {
  if (a === b || seen.has(a)) return;
  seen.add(a);
  if (a instanceof Map && b instanceof Map) {
    yield* pairs([...a], [...b], path, seen);
    return;
  }
  const keys = Object.keys(a);
  if (!Array.isArray(a)) {
    if (String(keys) !== String(Object.keys(b))) return;
    yield [path, a, b];
  }
  for (const key of keys) {
    const [one, other] = [Reflect.get(a, key) as unknown, Reflect.get(b, key) as unknown];
    if (typeof one === 'object' && typeof other === 'object' && one !== null && other !== null)
      yield* pairs(one, other, Array.isArray(a) ? path : `${path}.${key}`, seen);
  }
}
