// How many more cameras fit is held against the text that really has so many more, read and checked afresh: with them
// it has no new error, with one more it has one. The text is written here, not by what is tested.
import assert from 'node:assert/strict';
import fc from 'fast-check';
import { describe, it } from 'mocha';
import { check } from '../../server/src/check.ts';
import { headroomOf } from '../../server/src/headroom/headroom.ts';
import { type Entry, entriesOf, folderOf, planFrom, smallSite, textOf } from './small-site.ts';

/** The site with so many free ports at each switch, where cameras would be plugged in. */
function withFreePorts(entries: readonly Entry[], number: number): Entry[] {
  return entries.map((entry) => {
    const data = entry.data as Record<string, unknown>;
    if (data['kind'] !== 'switch') return entry;
    const free = { [`1-${number}`]: { speed: '1 Gb/s', vlan: 'video', poe: 'at' } };
    return { ...entry, data: { ...data, ports: { ...(data['ports'] as object), ...free } } };
  });
}

/** What a person writes for further cameras like one at a switch. */
function further(entries: readonly Entry[], camera: string, at: string, number: number): Entry[] {
  return Array.from({ length: number }, (_, i): Entry[] => {
    const streams = new Map<string, string>();
    const found: Entry[] = [{ section: 'cables', name: undefined, data: { from: `${at}/${i + 1}`, to: `new-${i}` } }];
    for (const { section, name = '', data: all } of entries) {
      const data = all as Record<string, unknown>;
      if (section === 'devices' && name === camera)
        found.push({ section, name: `new-${i}`, data: { ...data, address: `192.168.20.${150 + i}` } });
      if (section === 'streams' && data['source'] === camera) {
        streams.set(name, `${name}-new-${i}`);
        found.push({ section, name: `${name}-new-${i}`, data: { ...data, source: `new-${i}` } });
      }
    }
    for (const { section, name = '', data: all } of entries) {
      const data = all as Record<string, unknown>;
      const carried = streams.get(String(data['carries']));
      const own = `${name}-new-${i}`;
      if (section === 'streams' && carried !== undefined) {
        const group = `239.192.${100 + i}.${name.replaceAll(/\D/g, '')}`;
        found.push({ section, name: own, data: { ...data, carries: carried, group } });
      }
      const recorded = streams.get(String(data['stream']));
      if (section === 'recordings' && recorded !== undefined)
        found.push({ section, name: own, data: { ...data, stream: recorded } });
    }
    return found;
  }).flat();
}

/** Errors by what they say, each as often as it is there. */
function errorsIn(entries: readonly Entry[]): string[] {
  return check(folderOf(textOf(entries)))
    .diagnostics.filter(({ severity }) => severity === 'error')
    .map(({ rule, message }) => `${rule.id}: ${message}`);
}

function newErrors(before: readonly string[], after: readonly string[]): string[] {
  const left = [...before];
  return after.filter((error) => {
    const index = left.indexOf(error);
    if (index >= 0) left.splice(index, 1);
    return index < 0;
  });
}

describe('headroom of sites at random', () => {
  it('is as many more cameras as bring no new error, and one more does', () => {
    const stops = new Set<string>();
    fc.assert(
      fc.property(smallSite(), fc.nat(), fc.nat(), fc.integer({ min: 1, max: 6 }), (site, which, where, free) => {
        const entries = withFreePorts(entriesOf({ ...site, keep: 1 + (site.keep % 9) }), free);
        const camera = `cam-${which % site.cameras.length}`;
        const at = `switch-${where % site.switches.length}`;
        const plan = planFrom(textOf(entries));
        const [device, to] = [camera, at].map((name) => plan.site.deviceByName.get(name));
        assert.ok(device !== undefined && to !== undefined);
        const { more, limits } = headroomOf(plan, device, to);
        const before = errorsIn(entries);
        const brings = (number: number): string[] =>
          newErrors(before, errorsIn([...entries, ...further(entries, camera, at, number)]));
        if (more > 0) assert.deepEqual(brings(more), [], `${more} more of ${camera} at ${at}`);
        const stopped = new Set(brings(more + 1).map((error) => error.split(':', 1)[0] ?? ''));
        assert.ok(stopped.size > 0, `${more + 1} more of ${camera} at ${at}`);
        for (const rule of stopped) stops.add(rule);
        for (const [i, limit] of limits.entries())
          assert.ok((limit.more ?? Infinity) >= (limits[i - 1]?.more ?? 0), 'limits are in order');
      }),
      { numRuns: 60 },
    );
    for (const rules of [['no-such-port'], ['poe-budget'], ['volume-fill'], ['link-load', 'flooding']])
      assert.ok(
        rules.some((rule) => stops.has(rule)),
        `${rules.join(' or ')} stops some of them, and not only ${[...stops].join(', ')}`,
      );
  });
});
