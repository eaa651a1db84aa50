/**
 * Run by shapes.test.ts: prints, as JSON, how many operations a check of shapes of hostile text takes, small and four
 * times as large. Its arguments are the first seed and how many.
 */

// Imported first, so that all other code has counters.
import { operations } from '../operations.ts';
import { check } from '../../server/src/check.ts';
import { folderOf } from '../site.ts';
import { shapeAtRandom } from './hostile-shapes.ts';
import { Random } from './random.ts';

const SIZE = 12_000;
const [first = 0, count = 1] = process.argv.slice(2).map(Number);
const counts: [string, number, number][] = [];
for (let seed = first; seed < first + count; seed++) {
  const { title, texts } = shapeAtRandom(new Random(seed));
  const cost = (size: number): Promise<number> => operations(() => void check(folderOf(texts(size))).diagnostics);
  counts.push([`seed ${seed}, ${title}`, await cost(SIZE), await cost(4 * SIZE)]);
}
console.log(JSON.stringify(counts));
