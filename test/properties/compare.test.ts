// What holds for comparisons of any two plans.
import assert from 'node:assert/strict';
import fc from 'fast-check';
import { describe, it } from 'mocha';
import { check } from '../../server/src/check.ts';
import { type Comparison, type Side, compare, isSamePlan } from '../../server/src/compare/compare.ts';
import { purchasesOf } from '../../server/src/purchases/purchases.ts';
import { SiteFolder } from '../../server/src/site/folder.ts';
import { type Entry, entriesOf, folderOf, smallSite, textOf } from './small-site.ts';

const side = (entries: readonly Entry[]): Side => check(folderOf(textOf(entries)));

const OPPOSITE: Readonly<Record<string, string>> = {
  before: 'after',
  after: 'before',
  new: 'solved',
  solved: 'new',
  buy: 'left',
  left: 'buy',
};
const OPPOSITE_WORK: Readonly<Record<string, string>> = {
  lay: 'pull',
  pull: 'lay',
  install: 'remove',
  remove: 'install',
};

/** The same seen from the other side. */
function mirrored(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(mirrored);
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(
    Object.entries(value).map(([key, inner]) => [
      OPPOSITE[key] ?? key,
      key === 'work' && typeof inner === 'string' ? (OPPOSITE_WORK[inner] ?? inner) : mirrored(inner),
    ]),
  );
}

/** Lists in an order of their own: they follow that of the later plan. */
function inOrder(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(inOrder).sort((a, b) => (JSON.stringify(a) < JSON.stringify(b) ? -1 : 1));
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(
    Object.entries(value)
      .map(([key, inner]) => [key, inOrder(inner)] as const)
      .sort(([a], [b]) => (a < b ? -1 : 1)),
  );
}

/** A camera bears another name, wherever it is named. */
function renamed(entries: readonly Entry[]): Entry[] {
  const text = JSON.stringify(entries).replaceAll('"cam-0"', '"front"');
  return JSON.parse(text) as Entry[];
}

describe('a comparison of two plans', () => {
  it('of one with itself is empty, whatever the order and the files of its text', () => {
    fc.assert(
      fc.property(smallSite(), fc.nat(), fc.array(fc.nat(), { minLength: 7, maxLength: 7 }), (site, cut, keys) => {
        const entries = entriesOf(site);
        const folder = new SiteFolder();
        const at = cut % (entries.length + 1);
        const shuffled = entries
          .map((entry, index) => ({ entry, key: ((keys[index % 7] ?? 0) + 31 * index) % 101 }))
          .sort((one, other) => one.key - other.key)
          .map(({ entry }) => entry);
        folder.set('file:///b.site.yaml', `# cut\n${textOf(shuffled.slice(0, at))}`);
        folder.set('file:///a.site.yaml', textOf(shuffled.slice(at)));
        const all = compare(side(entries), check(folder));
        assert.ok(isSamePlan(all), JSON.stringify(all));
      }),
      { numRuns: 25 },
    );
  });

  it('is the mirror of that the other way round', () => {
    fc.assert(
      fc.property(smallSite(), smallSite(), fc.boolean(), (one, other, isRenamed) => {
        const [a, b] = [side(entriesOf(one)), side(isRenamed ? renamed(entriesOf(other)) : entriesOf(other))];
        assert.deepEqual(inOrder(mirrored(compare(a, b))), inOrder(compare(b, a) as unknown));
      }),
      { numRuns: 25 },
    );
  });

  it('buys what the later plan takes, less what the earlier has', () => {
    fc.assert(
      fc.property(smallSite(), smallSite(), (one, other) => {
        const [a, b] = [side(entriesOf(one)), side(entriesOf(other))];
        const { buy, left } = compare(a, b).purchases;
        const groups = new Set(['cable', 'lead', 'connector', 'module', 'device', 'disk', 'UPS']);
        const stock = new Map<string, number>();
        const put = (lines: Comparison['purchases']['buy'], sign: number): void => {
          for (const { group, what, count } of lines)
            if (groups.has(group)) stock.set(`${group} ${what}`, (stock.get(`${group} ${what}`) ?? 0) + sign * count);
        };
        put(purchasesOf(a.plan).lines, 1);
        put(buy, 1);
        put(left, -1);
        put(purchasesOf(b.plan).lines, -1);
        assert.deepEqual(
          [...stock].filter(([, count]) => count !== 0),
          [],
        );
      }),
      { numRuns: 25 },
    );
  });
});
