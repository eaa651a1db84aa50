/** Compares matching, planes and choices with all possibilities one by one. */

import assert from 'node:assert/strict';
import fc from 'fast-check';
import type { Connector, Device } from '../../server/src/site/model.ts';
import type { Multiplex } from '../../server/src/site/television/facts.ts';
import {
  type Rooms,
  type TakersByWish,
  maximumMatching,
  shortfalls,
  sizeOf,
} from '../../server/src/television/matching.ts';
import { matchingOnCables } from '../../server/src/television/planes.ts';
import { type Wish, fewestAsked } from '../../server/src/television/wishes.ts';

const ways = fc
  .integer({ min: 0, max: 5 })
  .chain((takers) => fc.array(fc.subarray(Array.from({ length: takers }, (_, taker) => taker)), { maxLength: 6 }));

/** How many each taker takes. */
const rooms = fc.array(fc.integer({ min: 0, max: 2 }), { minLength: 5, maxLength: 5 });

/** All ways to give each wish a taker that has room for it or none. */
function* all(
  given: TakersByWish,
  room: Rooms,
  taken: readonly (number | undefined)[] = [],
): Generator<readonly (number | undefined)[]> {
  const own = given[taken.length];
  if (own === undefined) {
    yield taken;
    return;
  }
  yield* all(given, room, [...taken, undefined]);
  for (const taker of own) if (holds(taken, taker) < (room[taker] ?? 0)) yield* all(given, room, [...taken, taker]);
}

function holds(taken: readonly (number | undefined)[], taker: number): number {
  return taken.filter((each) => each === taker).length;
}

function mostOf(given: TakersByWish, room: Rooms): number {
  return Math.max(...[...all(given, room)].map(sizeOf));
}

function* subsetsOf<T>(things: readonly T[]): Generator<T[]> {
  for (let bits = 0; bits < 2 ** things.length; bits++) yield things.filter((_, index) => (bits >> index) % 2 === 1);
}

describe('A maximum matching', () => {
  it('gives as many as any other, each to whom it can be given and who has room', () => {
    fc.assert(
      fc.property(ways, rooms, (given, room) => {
        const found = maximumMatching(given, room);
        room.forEach((own, taker) => assert.ok(holds(found, taker) <= own));
        found.forEach((taker, wish) => assert.ok(taker === undefined || given[wish]?.includes(taker)));
        assert.equal(sizeOf(found), mostOf(given, room));
      }),
    );
  });

  // Hall's theorem in the form with a deficit (Ore 1955): what is left is the most that a set exceeds its takers by.
  it('names the smallest set that lacks as many takers as the whole', () => {
    fc.assert(
      fc.property(ways, rooms, (given, room) => {
        const matching = maximumMatching(given, room);
        const roomOf = (takers: readonly number[]): number =>
          takers.reduce((sum, taker) => sum + (room[taker] ?? 0), 0);
        const parts = shortfalls(given, matching);
        const lack = (wishes: readonly number[]): number =>
          wishes.length - roomOf([...new Set(wishes.flatMap((wish) => given[wish] ?? []))]);
        const sets = [...subsetsOf(given.map((_, wish) => wish))];
        const worst = Math.max(...sets.map(lack));
        const [smallest, ...others] = sets.filter((set) => lack(set) === worst).sort((a, b) => a.length - b.length);
        assert.ok(others.every(({ length }) => length > (smallest?.length ?? 0)));
        assert.deepEqual(parts.flatMap(({ wishes }) => wishes).sort(), smallest);
        for (const { wishes, takers, missing } of parts) {
          assert.equal(missing, lack(wishes));
          assert.equal(missing, wishes.length - roomOf(takers));
        }
        const takers = parts.flatMap((part) => part.takers);
        assert.equal(new Set(takers).size, takers.length);
      }),
    );
  });
});

describe('A matching on LNB cables', () => {
  const plane = fc.option(fc.record({ volts: fc.constantFrom<13 | 18>(13, 18), tone: fc.boolean() }), {
    nil: undefined,
    freq: 4,
  });
  const outputs = [{ name: 'out-1' }, { name: 'out-2' }] as Connector[];

  it('gives as many as any in which no cable carries two planes', () => {
    fc.assert(
      fc.property(
        ways,
        rooms,
        fc.array(plane, { minLength: 6, maxLength: 6 }),
        fc.array(fc.option(fc.constantFrom(...outputs), { nil: undefined, freq: 6 }), { minLength: 5, maxLength: 5 }),
        (given, room, planes, cables) => {
          const isPossible = (matching: readonly (number | undefined)[]): boolean =>
            outputs.every((output) => {
              const carried = matching.flatMap((taker, wish) => {
                const wanted = planes[wish];
                return taker === undefined || wanted === undefined || cables[taker] !== output ? [] : [wanted];
              });
              return carried.every(({ volts, tone }) => volts === carried[0]?.volts && tone === carried[0].tone);
            });
          const found = matchingOnCables(given, { rooms: room, outputs: cables, planes });
          assert.ok(isPossible(found));
          assert.equal(sizeOf(found), Math.max(...[...all(given, room)].filter(isPossible).map(sizeOf)));
        },
      ),
    );
  });
});

describe('What is asked for', () => {
  const names = ['a', 'b', 'c', 'd', 'e'];
  const multiplexes = names.map((name) => ({ name }) as Multiplex);
  const sources = [undefined, { name: 'x' } as Device, { name: 'y' } as Device];
  const wish = fc.record({
    name: fc.constant('film'),
    multiplexes: fc.subarray(multiplexes, { minLength: 1, maxLength: 3 }),
    source: fc.constantFrom(...sources),
    stream: fc.constant(undefined),
  });

  it('is no more than any choice asks for', () => {
    fc.assert(
      fc.property(fc.array(wish, { maxLength: 6 }), (wishes: Wish[]) => {
        const asked = fewestAsked(
          wishes,
          () => true,
          () => 0,
        );
        for (const { multiplexes: any, source } of wishes)
          assert.ok(
            asked.some((one) => any.includes(one.multiplex) && (source === undefined || one.source === source)),
          );
        // Every set of a multiplex and a device, from the smallest.
        const all = multiplexes.flatMap((multiplex) => sources.map((source) => ({ multiplex, source })));
        const fulfils = (set: readonly (typeof all)[number][]): boolean =>
          wishes.every((own) =>
            set.some(
              ({ multiplex, source }) =>
                own.multiplexes.includes(multiplex) && (own.source === undefined || own.source === source),
            ),
          );
        const smallerExists = asked.length > 0 && setsOf(all, asked.length - 1).some(fulfils);
        assert.ok(!smallerExists);
      }),
      { numRuns: 100 },
    );
  });
});

function setsOf<T>(things: readonly T[], size: number): T[][] {
  if (size === 0) return [[]];
  return things.flatMap((thing, index) => setsOf(things.slice(index + 1), size - 1).map((set) => [thing, ...set]));
}
