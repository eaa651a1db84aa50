// How many more fit is held against the site that has so many more: with them it is within its limits, with one more
// of them it is not.
import assert from 'node:assert/strict';
import fc from 'fast-check';
import { describe, it } from 'mocha';
import type { Plan } from '../../server/src/plan.ts';
import { outHeadroom, streamHeadroom, streamHeadrooms } from '../../server/src/report/headroom.ts';
import { type Entry, entriesOf, planFrom, smallSite, textOf } from './small-site.ts';

/** Copies that are still planned: a site of as many more as fit into a gigabit of small streams takes its time. */
const MOST = 40;

/** The entries with `number` more streams of the same source, receivers and recordings as the one of that name. */
function withMore(entries: readonly Entry[], name: string, number: number): Entry[] {
  const more = Array.from({ length: number }, (_, i) => `${name}-more-${i}`);
  const added = entries.flatMap((entry): Entry[] => {
    const data = entry.data as Record<string, unknown>;
    if (entry.section === 'streams' && entry.name === name)
      return more.map((own, i) => ({
        section: 'streams',
        name: own,
        data: { ...data, port: 20_000 + 2 * i, ...(data['group'] !== undefined && { group: `239.192.99.${i + 1}` }) },
      }));
    if (entry.section === 'recordings' && data['stream'] === name)
      return more.map((own) => ({
        section: 'recordings',
        name: `${entry.name}-${own}`,
        data: { ...data, stream: own },
      }));
    return [];
  });
  return [...entries, ...added];
}

/** Whether every link and volume is within the 90 % that are usual. */
function isWithinLimits({ network, storage }: Plan): boolean {
  return (
    network.topology.links.every((link) =>
      [link.a, link.b].every(
        (out) => link.capacity === undefined || network.load(link, out).line.peak <= 0.9 * link.capacity,
      ),
    ) &&
    storage.volumes.every(({ usableBytes, bytesKept }) => usableBytes === undefined || bytesKept <= 0.9 * usableBytes)
  );
}

describe('headroom of sites at random', () => {
  it('is as many more of a stream as fit, and one more does not', () => {
    let held = 0;
    fc.assert(
      fc.property(smallSite(), (site) => {
        const entries = entriesOf(site);
        const plan = planFrom(textOf(entries));
        for (const stream of plan.site.streams) {
          const more = streamHeadroom(plan, stream)?.more;
          if (more === undefined || more > MOST) continue;
          held++;
          const within = (number: number): boolean =>
            isWithinLimits(planFrom(textOf(withMore(entries, stream.name, number))));
          if (isWithinLimits(plan)) assert.ok(within(more), `${more} more of ${stream.name} fit`);
          assert.ok(!within(more + 1), `${more + 1} more of ${stream.name} do not`);
        }
      }),
      { numRuns: 40 },
    );
    assert.ok(held > 40, `${held} streams were held`);
  });

  it('of a direction is that of the stream that puts most on it, and of all streams at once that of each', () => {
    fc.assert(
      fc.property(smallSite(), (site) => {
        const plan = planFrom(textOf(entriesOf(site)));
        const all = streamHeadrooms(plan);
        for (const stream of plan.site.streams) assert.deepEqual(all.get(stream), streamHeadroom(plan, stream));
        for (const link of plan.network.topology.links) {
          for (const out of [link.a, link.b]) {
            const loads = plan.network.copies(link, out).map(({ stream, untagged, tagged }) => {
              const rates = plan.network.rates(stream);
              assert.ok(rates !== undefined);
              return { stream, load: untagged * rates.untagged.line.peak + tagged * rates.tagged.line.peak };
            });
            const greatest = Math.max(0, ...loads.map(({ load }) => load));
            const found = outHeadroom(plan, link, out);
            assert.equal(found === undefined, greatest === 0);
            if (found === undefined) continue;
            assert.equal(loads.find(({ stream }) => stream === found.stream)?.load, greatest);
            assert.deepEqual(found.headroom, all.get(found.stream));
          }
        }
      }),
      { numRuns: 100 },
    );
  });
});
