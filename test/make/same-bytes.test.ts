// The same site gives the same bytes, however often it is made and however its files are cut and ordered.
import assert from 'node:assert/strict';
import fc from 'fast-check';
import { describe, it } from 'mocha';
import type { Made, Output } from '../../server/src/make/output.ts';
import { OUTPUTS } from '../../server/src/make/outputs.ts';
import type { Plan } from '../../server/src/plan.ts';
import { entriesOf, planFrom, smallSite, textOf } from '../properties/small-site.ts';
import { planOfTexts, sampleTexts } from './made.ts';

/** What is in an order of its own; the rest may follow the order of the site, as a playlist does. */
const IN_ANY_ORDER = [
  'iproute2',
  'networkd',
  'dnsmasq',
  'address-plan',
  'port-table',
  'patch-schedule',
  'bill-of-materials',
  'cable-labels',
  'outlet-schedule',
];

function madeOf(plan: Plan, outputs: readonly Output[]): unknown[] {
  return outputs.map((output) => ({
    kind: output.kind,
    subjects: [...output.subjects(plan)].sort(),
    made: sorted(output.make(plan)),
  }));
}

/** Refusals and notes follow the order of the site; only the files have to be alike. */
function sorted({ files, refused, notes }: Made): unknown {
  const byPath = [...files].sort((a, b) => (a.path < b.path ? -1 : 1));
  return { files: byPath, refused: refused.map(({ message }) => message).sort(), notes: [...notes].sort() };
}

describe('what is made', function () {
  const ordered = OUTPUTS.filter(({ kind }) => IN_ANY_ORDER.includes(kind));

  for (const sample of ['harrow-lane', 'first-draft']) {
    it(`is the same each time: ${sample}`, () => {
      const texts = sampleTexts(sample);
      assert.deepEqual(madeOf(planOfTexts(texts), OUTPUTS), madeOf(planOfTexts(texts), OUTPUTS));
    });

    it(`is the same with the files in another order: ${sample}`, () => {
      const texts = sampleTexts(sample);
      // Files are read by their names.
      const turned = Object.entries(texts)
        .reverse()
        .map(([, text], index) => [`${index}.site.yaml`, text]);
      assert.deepEqual(
        madeOf(planOfTexts(Object.fromEntries(turned) as Record<string, string>), ordered),
        madeOf(planOfTexts(texts), ordered),
      );
    });
  }

  it('is the same with everything in another order and in two files: sites at random', () => {
    fc.assert(
      fc.property(smallSite(), fc.infiniteStream(fc.nat()), (site, order) => {
        const entries = entriesOf(site);
        const key = new Map(entries.map((entry) => [entry, order.next().value ?? 0]));
        const shuffled = [...entries].sort((a, b) => (key.get(a) ?? 0) - (key.get(b) ?? 0));
        const half = Math.floor(shuffled.length / 2);
        const inTwo = planFrom(textOf(shuffled.slice(0, half)), textOf(shuffled.slice(half)));
        assert.deepEqual(madeOf(inTwo, ordered), madeOf(planFrom(textOf(entries)), ordered));
      }),
      { numRuns: 60 },
    );
  });

  it('stands in a file of its own each, below the folder, with a last line end', () => {
    for (const sample of ['harrow-lane', 'first-draft']) {
      const files = OUTPUTS.flatMap((output) => output.make(planOfTexts(sampleTexts(sample))).files);
      // Relays and recorders share units, and what goes with them.
      assert.equal(
        new Set(files.map(({ path }) => path)).size,
        new Set(files.map((file) => JSON.stringify(file))).size,
      );
      for (const { path, text } of files) {
        assert.match(path, /^[\w][\w.@+-]*(\/[\w][\w.@+-]*)*$/);
        assert.ok(text.endsWith('\n'), path);
      }
    }
  });
});
