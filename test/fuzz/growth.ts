/** Run by memory.test.ts with --expose-gc: prints the heap in bytes after each thousand of ten thousand edits, as JSON. */

import { check, type Checked } from '../../server/src/rules/check.ts';
import { hover } from '../../server/src/features/hover/hover.ts';
import { SiteFolder } from '../../server/src/site/folder.ts';
import { samples } from './corpus.ts';
import { putIn } from './mutate.ts';
import { Random } from './random.ts';

const EDITS = 10_000;
const random = new Random(1);
const folder = new SiteFolder();
const begin = Object.entries(samples[1] ?? {});
let checked: Checked | undefined;
const heaps: number[] = [];

for (let edit = 0; edit < EDITS; edit++) {
  const [uri, text] = random.pick(begin) ?? ['', ''];
  // Every other edit undoes the one before, so that the site is the same at each measurement.
  const at = random.below(text.length);
  folder.set(uri, putIn(text, at, `word-${edit}`));
  checked = check(folder, checked);
  for (const { fixes } of checked.diagnostics.slice(0, 2)) fixes?.();
  const file = folder.get(uri);
  if (file !== undefined) hover(checked, file, at);
  for (const [name, own] of begin) folder.set(name, own);
  checked = check(folder, checked);
  if (edit % 1000 === 999) heaps.push(heapAfterCollection());
}
console.log(JSON.stringify(heaps));

function heapAfterCollection(): number {
  if (globalThis.gc === undefined) throw new Error('run with --expose-gc');
  globalThis.gc();
  globalThis.gc();
  return process.memoryUsage().heapUsed;
}
