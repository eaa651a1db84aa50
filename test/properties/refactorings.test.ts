// What must hold of every refactoring, wherever it is offered in a site at random.
import assert from 'node:assert/strict';
import { readdirSync } from 'node:fs';
import fc from 'fast-check';
import { describe, it } from 'mocha';
import { stringify } from 'yaml';
import { generatedSite } from '../bench/generated-site.ts';
import { assertSameSite, assertSound, everyRefactoring, reportFrom } from '../features/refactorings/refactored.ts';
import type { Texts } from '../site.ts';
import { type Entry, entriesOf, smallSite, textOf } from './small-site.ts';

/** The same entries on lines of their own, with a comment at each. */
function onLines(entries: readonly Entry[]): string {
  const sections = [...new Set(entries.map(({ section }) => section))];
  const texts = sections.map((section) => {
    const own = entries.filter((entry) => entry.section === section);
    const [first] = own;
    const data =
      first?.name === undefined
        ? own.map((entry) => entry.data)
        : Object.fromEntries(own.map((entry) => [entry.name ?? '', entry.data]));
    return `# All ${section}.\n${stringify({ [section]: data }, { lineWidth: 0 })}`;
  });
  let line = 0;
  return texts.join('\n').replace(/(?<=[^\n])\n/g, () => (++line % 3 === 0 ? `   # line ${line}\n` : '\n'));
}

/** With ports that have numbers for names, as those of switches do. */
function numbered(entries: readonly Entry[]): Entry[] {
  return JSON.parse(JSON.stringify(entries).replace(/(?<=["/])p(?=\d+")/g, '')) as Entry[];
}

/** A site's texts, in braces or on lines, in one file or two, with either end of line. */
function texts(): fc.Arbitrary<Texts> {
  return fc.tuple(smallSite(), fc.boolean(), fc.boolean(), fc.boolean()).map(([site, isOnLines, isSplit, isCrlf]) => {
    const write = isOnLines ? onLines : textOf;
    const entries = numbered(entriesOf(site));
    const isFirst = ({ section }: Entry): boolean => !isSplit || section === 'cables' || section === 'devices';
    const ended = (text: string): string => (isCrlf ? text.replaceAll('\n', '\r\n') : text);
    return {
      'file:///harrow-lane/all.site.yaml': ended(write(entries.filter(isFirst))),
      ...(isSplit && {
        'file:///harrow-lane/cables.site.yaml': ended(write(entries.filter((entry) => !isFirst(entry)))),
      }),
    };
  });
}

/** What switches make of a group was so before, and had no consequence yet: the text, names and streams are sound. */
const OF_THE_NETWORK = new RegExp(
  `^(?:${['text', 'names', 'streams']
    .flatMap((folder) => readdirSync(`server/src/rules/${folder}`))
    .map((file) => `(?!${file.replace('.ts', '')}:)`)
    .join('')})`,
);

describe('refactorings of sites at random', () => {
  it('change no figure, lose no comment and leave sound YAML; or leave one copy at the camera', () => {
    const offers = new Map<string, number>();
    fc.assert(
      fc.property(texts(), (before) => {
        for (const {
          offered: { title },
          after,
        } of everyRefactoring(before)) {
          const sort = title.split(' ')[0] ?? '';
          offers.set(sort, (offers.get(sort) ?? 0) + 1);
          for (const [uri, text] of Object.entries(after)) {
            const isCrlf = Object.values(before).some((own) => own.includes('\r'));
            assert.equal(/[^\r]\n/.test(text), !isCrlf, uri);
          }
          if (!title.startsWith('Re-send')) assertSameSite(before, after);
          else {
            assertSound(before, after, OF_THE_NETWORK);
            assertOneCopy(before, after, /^Re-send (\S+)/.exec(title)?.[1] ?? '');
          }
        }
      }),
      { numRuns: 25 },
    );
    for (const sort of ['Move', 'Split', 'Write', 'Re-send'])
      assert.ok((offers.get(sort) ?? 0) > 3, `${sort}: ${JSON.stringify([...offers])}`);
  });

  it('change no figure of a site of a thousand lines', () => {
    const before = { 'file:///harrow-lane/all.site.yaml': generatedSite(1000) };
    const sorts = new Set<string>();
    for (const {
      offered: { title },
      after,
    } of everyRefactoring(before)) {
      sorts.add(title.split(' ')[0] ?? '');
      assertSameSite(before, after);
    }
    assert.deepEqual([...sorts].sort(), ['Move', 'Split', 'Write']);
  });
});

/** The receivers that are left get it once, from the source to the server. */
function assertOneCopy(before: Texts, after: Texts, name: string): void {
  const [was, is] = [before, after].map((texts) => reportFrom(texts).streams.find((stream) => stream.name === name));
  assert.ok(was !== undefined && is !== undefined);
  assert.equal(is.reaches.length + is.unreached.length, 1);
  const { streams, links } = reportFrom(after);
  const live = streams.find((stream) => stream.name.startsWith(`${name}-live`));
  assert.ok(live !== undefined && live.group !== null);
  const wanted = (own: typeof was): string[] => [...own.reaches, ...own.unreached];
  assert.deepEqual(new Set([...wanted(live), ...wanted(is)]), new Set([...wanted(was), ...wanted(is)]));
  // No link carries more than one copy of what the camera sends.
  for (const { forward, backward } of links) {
    for (const { streams: own } of [forward, backward]) {
      assert.ok((own[name]?.payload.nominal ?? 0) <= is.payload.nominal);
    }
  }
}
