// What a site's figures must not depend on: names, order, files, and the way it was typed.
import assert from 'node:assert/strict';
import fc from 'fast-check';
import { describe, it } from 'mocha';
import { planOf } from '../../server/src/plan.ts';
import { type Report, reportOf } from '../../server/src/report/report.ts';
import { check } from '../../server/src/check.ts';
import { SiteFolder, spanOf } from '../../server/src/site/folder.ts';
import { type Place, fileOf } from '../../server/src/site/item.ts';
import { type Entry, entriesOf, folderOf, reportFrom, smallSite, textOf } from './small-site.ts';

const RUNS = { numRuns: 60 };

/** The figures of a report without the order of anything, and without words. */
function figures(report: Report): unknown {
  const byName = <T>(list: readonly T[], name: (each: T) => string): T[] =>
    [...list].sort((a, b) => (name(a) < name(b) ? -1 : 1));
  return JSON.parse(
    JSON.stringify({
      links: byName(report.links, ({ from, to }) => `${from} ${to}`),
      streams: byName(report.streams, ({ name }) => name).map(({ reasons, reaches, unreached, ...rest }) => ({
        ...rest,
        reaches: [...reaches].sort(),
        unreached: [...unreached].sort(),
        missed: Object.keys(reasons).sort(),
      })),
      volumes: byName(report.volumes, ({ name }) => name),
      poe: byName(report.poe, ({ device }) => device),
    }),
  );
}

function assertSame(actual: Report, expected: Report): void {
  assert.deepEqual(figures(actual), figures(expected));
}

/** Data with its mappings and lists in another order. */
function turned(data: unknown): unknown {
  if (Array.isArray(data)) return data.map(turned).reverse();
  if (typeof data === 'object' && data !== null)
    return Object.fromEntries(
      Object.entries(data)
        .reverse()
        .map(([key, value]) => [key, turned(value)]),
    );
  return data;
}

const NAMES =
  /(?<![\w-])(switch|cam|screen|pull|live|rec)-(\d+)(?![\w-])|(?<![\w-])(recorder|router|archive|house|video)(?![\w-])/g;

/** Another name for each thing that a site declares; keys of the language are not among them. */
function renamed(text: string): string {
  return text.replace(
    NAMES,
    (
      name: string,
      kind: string | undefined,
      number: string | undefined,
      _other: string | undefined,
      offset: number,
    ) => {
      const before = text.slice(0, offset);
      // In a stream `video` is a key of the language, and a router is of the kind `router`.
      if (text.startsWith('video":{"codec"', offset) || before.endsWith('"kind":"')) return name;
      return kind === undefined ? `Z_${name}` : `${String.fromCharCode(122 - Number(number))}_${kind}`;
    },
  );
}

describe('figures of sites at random', () => {
  it('stay the same when everything gets another name', () => {
    fc.assert(
      fc.property(smallSite(), (site) => {
        const text = textOf(entriesOf(site));
        const other = renamed(text);
        assert.doesNotMatch(other, /cam-0|switch-0|"recorder"/);
        const expected = JSON.parse(renamed(JSON.stringify(reportFrom(text)))) as Report;
        assertSame(reportFrom(other), expected);
      }),
      RUNS,
    );
  });

  it('stay the same when entries, keys and lists are in another order', () => {
    fc.assert(
      fc.property(
        smallSite().chain((site) => {
          const entries = entriesOf(site);
          return fc.tuple(fc.constant(entries), fc.shuffledSubarray(entries, { minLength: entries.length }));
        }),
        ([entries, shuffled]) => {
          const other = shuffled.map((entry) =>
            entry.section === 'cables' ? entry : { ...entry, data: turned(entry.data) },
          );
          assertSame(reportFrom(textOf(other)), reportFrom(textOf(entries)));
        },
      ),
      RUNS,
    );
  });

  it('stay the same when the site is split over files', () => {
    fc.assert(
      fc.property(
        smallSite().chain((site) => {
          const entries = entriesOf(site);
          return fc.tuple(
            fc.constant(entries),
            fc.array(fc.nat({ max: 3 }), { minLength: entries.length, maxLength: entries.length }),
          );
        }),
        ([entries, into]) => {
          const files = [0, 1, 2, 3].map((file) => textOf(entries.filter((_, index) => into[index] === file)));
          assertSame(reportFrom(...files), reportFrom(textOf(entries)));
        },
      ),
      RUNS,
    );
  });

  it('and findings are the same after any edits as when the site is read anew', () => {
    const edit = fc.record({
      file: fc.nat({ max: 1 }),
      at: fc.double({ min: 0, max: 1, noNaN: true }),
      drop: fc.nat({ max: 40 }),
      put: fc.constantFrom(
        '',
        'x',
        ' ',
        '\n',
        ':',
        '{',
        '}',
        ', ',
        '"',
        '- ',
        '  a: b\n',
        'devices:\n',
        '&a ',
        '*a',
        '#',
      ),
    });
    fc.assert(
      fc.property(smallSite(), smallSite(), fc.array(edit, { maxLength: 8 }), (one, two, edits) => {
        const folder = new SiteFolder();
        const texts = [textOf(entriesOf(one)), ''];
        const compare = (): void => {
          texts.forEach((text, index) => folder.set(`file:///harrow-lane/${index}.site.yaml`, text));
          assert.deepEqual(seen(folder), seen(folderOf(...texts)));
        };
        compare();
        for (const { file, at, drop, put } of edits) {
          const text = texts[file] ?? '';
          const start = Math.floor(at * text.length);
          texts[file] = text.slice(0, start) + put + text.slice(start + drop);
          compare();
        }
        // The whole of another site, part in each file, and back.
        const [first, second] = halves(entriesOf(two));
        texts[0] = textOf(first);
        texts[1] = textOf(second);
        compare();
        texts.reverse();
        compare();
      }),
      { numRuns: 10 },
    );
  });
});

function halves(entries: readonly Entry[]): [Entry[], Entry[]] {
  return [entries.filter((_, index) => index % 2 === 0), entries.filter((_, index) => index % 2 === 1)];
}

/** Everything that is said of a site: its report, and its findings with their places. */
function seen(folder: SiteFolder): unknown {
  const { diagnostics } = check(folder);
  const placed = (at: Place): object => {
    const file = folder.get(fileOf(at).uri);
    assert.ok(file !== undefined);
    return { file: file.uri, ...spanOf(file, at) };
  };
  const findings = diagnostics.map(({ at, rule, severity, message }) => ({
    ...placed(at),
    rule: rule.id,
    severity,
    message,
  }));
  return { findings, report: JSON.parse(JSON.stringify(reportOf(planOf(folder.site())))) };
}
