// What a safe fix does to a site with one slip of the pen: it gives back what was meant, or nothing is safe.
import assert from 'node:assert/strict';
import fc from 'fast-check';
import { check } from '../../server/src/check.ts';
import type { Diagnostic } from '../../server/src/lint/rule.ts';
import { reportOf } from '../../server/src/report/report.ts';
import { applyEdits, type Fix } from '../../server/src/site/edit.ts';
import { type Entry, entriesOf, folderOf, smallSite, textOf } from './small-site.ts';

/**
 * A character of a word in the text: left out, written twice, swapped with the next, or another but a space in its
 * place.
 */
interface Slip {
  readonly at: number;
  readonly kind: 'left out' | 'twice' | 'swapped' | 'another';
  readonly other: string;
}

const slip: fc.Arbitrary<Slip> = fc.record({
  at: fc.nat(),
  kind: fc.constantFrom('left out', 'twice', 'swapped', 'another'),
  other: fc.constantFrom(...'abcdefghijklmnopqrstuvwxyz0123456789-/.'),
});

/** With words that have near neighbours. */
function withWords(entries: readonly Entry[]): Entry[] {
  return [
    ...entries,
    {
      section: 'streams',
      name: 'more',
      data: {
        'source': 'cam-0',
        'transport': 'rtsp',
        'port': 555,
        'video': { 'codec': 'mpeg2', 'size': '1920x1080', 'bitrate': '6 Mb/s', 'keyframe-interval': '2 s' },
        'audio': { codec: 'pcmu', bitrate: '64 kb/s' },
        'packet-size': '1200 B',
        'receivers': ['recorder'],
      },
    },
    {
      section: 'volumes',
      name: 'spare',
      data: { host: 'recorder', capacity: '4 TB', redundancy: 'mirror', disks: 2, reserve: '5 %', path: '/srv/more' },
    },
  ];
}

function slipped(text: string, { at, kind, other }: Slip): string {
  const words = [...text.matchAll(/[A-Za-z0-9./-]+(?: [A-Za-z%/]+)?/g)];
  const letters = words.flatMap(({ index, 0: word }) => Array.from(word, (_, offset) => index + offset));
  const here = letters[at % letters.length] ?? 0;
  const [before, letter, after] = [text.slice(0, here), text.charAt(here), text.slice(here + 1)];
  switch (kind) {
    case 'left out':
      return before + after;
    case 'twice':
      return before + letter + letter + after;
    case 'swapped':
      return before + after.charAt(0) + letter + after.slice(1);
    case 'another':
      return before + (letter === ' ' ? letter : other) + after;
  }
}

const dataOf = (text: string): unknown =>
  folderOf(text).items.map(({ section, name, data }) => ({ section, name, data }));

function fixesOf(text: string): { readonly diagnostic: Diagnostic; readonly fix: Fix; readonly fixed: string }[] {
  const folder = folderOf(text);
  const [file = assert.fail()] = folder.files;
  return check(folder).diagnostics.flatMap((diagnostic) =>
    (diagnostic.fixes?.() ?? []).map((fix) => ({ diagnostic, fix, fixed: applyEdits(file, fix.edits) })),
  );
}

describe('a fix', () => {
  it('that is safe gives back what was meant before a slip of the pen', () => {
    let applied = 0;
    fc.assert(
      fc.property(smallSite(), slip, (site, made) => {
        const meant = textOf(withWords(entriesOf(site)));
        const text = slipped(meant, made);
        for (const { diagnostic, fix, fixed } of fixesOf(text)) {
          if (!fix.safe) continue;
          applied++;
          const told = `${diagnostic.message} ${fix.title}`;
          assert.deepEqual(dataOf(fixed), dataOf(meant), told);
          assert.deepEqual(reportOf(check(folderOf(fixed)).plan), reportOf(check(folderOf(meant)).plan), told);
        }
      }),
      { numRuns: 150 },
    );
    assert.ok(applied > 5, `only ${applied} fixes were safe`);
  });

  /** What a corrected name or value could run into. */
  const CLASHES = [
    'port-cabled-twice',
    'cable-to-itself',
    'no-such-port',
    'port-not-named',
    'wrong-type',
    'unknown-key',
  ];

  it('swaps no error for another', () => {
    let applied = 0;
    fc.assert(
      fc.property(smallSite(), slip, (site, made) => {
        const text = slipped(textOf(withWords(entriesOf(site))), made);
        const clashesIn = (of: string): number =>
          check(folderOf(of)).diagnostics.filter(({ rule }) => CLASHES.includes(rule.id)).length;
        const before = clashesIn(text);
        for (const { diagnostic, fix, fixed } of fixesOf(text)) {
          if (!['unknown-name', 'no-such-port', 'wrong-type', 'quantity'].includes(diagnostic.rule.id)) continue;
          applied++;
          assert.ok(clashesIn(fixed) <= before, `${diagnostic.message} ${fix.title}`);
        }
      }),
      { numRuns: 60 },
    );
    assert.ok(applied > 10, `only ${applied} fixes were tried`);
  });
});
