// What a failure loses is held against the report of the site without what fails, where a failed cable and an absent one
// are the same: not where a host has another card. What is sent on is followed here by itself.
import assert from 'node:assert/strict';
import fc from 'fast-check';
import { describe, it } from 'mocha';
import { elementNamed, elementsOf } from '../../server/src/failure/element.ts';
import { failureOf } from '../../server/src/failure/failure.ts';
import { rankedOf } from '../../server/src/failure/ranking.ts';
import type { Report } from '../../server/src/report/report.ts';
import { type Entry, entriesOf, planFrom, reportFrom, smallSite, textOf } from './small-site.ts';

/** Streams with the receivers that see something, as `stream receiver`. */
function seen({ streams }: Report, entries: readonly Entry[], gone: ReadonlySet<string>): Set<string> {
  const declared = new Map(
    entries
      .filter(({ section }) => section === 'streams')
      .map(({ name, data }) => [name, data as Record<string, unknown>]),
  );
  const reaches = new Map(streams.map(({ name, reaches: all }) => [name, all]));
  const hasContent = (name: string): boolean => {
    const { source, carries } = declared.get(name) ?? {};
    if (gone.has(String(source))) return false;
    return (
      carries === undefined ||
      (hasContent(String(carries)) && reaches.get(String(carries))?.includes(String(source)) === true)
    );
  };
  return new Set(
    [...reaches].flatMap(([name, all]) =>
      hasContent(name) ? all.filter((receiver) => !gone.has(receiver)).map((receiver) => `${name} ${receiver}`) : [],
    ),
  );
}

function without(entries: readonly Entry[], ends: readonly string[], device: string | undefined): Entry[] {
  return entries.filter(({ section, name, data }) => {
    if (section === 'devices') return name !== device;
    if (section !== 'cables') return true;
    const { from, to } = data as { from: string; to: string };
    if (device !== undefined) return [from, to].every((end) => end.split('/')[0] !== device);
    return !(ends.includes(from) && ends.includes(to));
  });
}

function difference<T>(a: ReadonlySet<T>, b: ReadonlySet<T>): T[] {
  return [...a].filter((one) => !b.has(one)).sort();
}

describe('failures in sites at random', () => {
  it('lose what the site without it lacks', () => {
    let lossless = 0;
    let losing = 0;
    fc.assert(
      fc.property(smallSite(), (site) => {
        // With two cards the recorder sends into the dead one.
        const entries = entriesOf({ ...site, server: { ...site.server, secondCard: false } });
        const text = textOf(entries);
        const plan = planFrom(text);
        const before = seen(reportFrom(text), entries, new Set());
        for (const { section, name, data } of entries) {
          const { from, to, kind } = data as { from: string; to: string; kind: string };
          if (section !== 'cables' && (section !== 'devices' || !['switch', 'camera', 'display'].includes(kind)))
            continue;
          const device = section === 'devices' ? name : undefined;
          const element = elementNamed(plan, device ?? from);
          assert.ok(element !== undefined);
          const { pictures, recordings, devices } = failureOf(plan, element);
          const gone = new Set([...devices.map((one) => one.name), ...(device === undefined ? [] : [device])]);
          const left = without(entries, [from, to], device);
          const after = seen(reportFrom(textOf(left)), entries, gone);
          const lost = difference(before, after);
          const what = device ?? `${from} – ${to}`;
          assert.deepEqual(
            pictures
              // Without a querier switches forget who has joined; in a report everybody has just done so.
              .filter(
                ({ stream, receiver, after: seconds }) => seconds === 0 || lost.includes(`${stream.name} ${receiver}`),
              )
              .map(({ stream, receiver }) => `${stream.name} ${receiver}`)
              .sort(),
            lost.filter((pair) => !pair.endsWith(' recorder')),
            what,
          );
          assert.deepEqual(
            recordings.map(({ stream }) => `${stream} recorder`).sort(),
            lost.filter((pair) => pair.endsWith(' recorder')),
            what,
          );
          if (lost.length > 0) losing++;
          else lossless++;
        }
      }),
      { numRuns: 40 },
    );
    assert.ok(losing > 100 && lossless > 20, `${losing} lose something, ${lossless} nothing`);
  });

  it('of an end alone are what all steps anew would give', () => {
    fc.assert(
      fc.property(smallSite(), (site) => {
        const plan = planFrom(textOf(entriesOf(site)));
        for (const element of elementsOf(plan)) {
          const { pictures, recordings, cameras } = failureOf(plan, element);
          const ranked = rankedOf(plan, element);
          const pairs = (all: typeof pictures): string[] =>
            all.map(({ stream, receiver }) => `${stream.name} ${receiver}`);
          assert.deepEqual(pairs(ranked.pictures), pairs(pictures), element.name);
          assert.deepEqual(ranked.recordings, recordings, element.name);
          assert.deepEqual(ranked.cameras, cameras, element.name);
        }
      }),
      { numRuns: 40 },
    );
  });
});
