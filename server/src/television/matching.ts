/**
 * A maximum matching of wishes to takers, of which each may take several, and the wishes that are left without.
 *
 * Augmenting paths (Berge 1957) and the theorem of Hall (1935), from memory.
 */

/** The takers that each of some wishes may be given to, as numbers from 0. */
export type TakersByWish = readonly (readonly number[])[];

/** How many wishes each taker takes, by its number. */
export type Rooms = readonly number[];

/** By wish, the taker that it is given to. */
export type Matching = readonly (number | undefined)[];

/** A matching that gives as many wishes as possible; the first wishes and the first takers come first. */
export function maximumMatching(ways: TakersByWish, rooms: Rooms): Matching {
  const takers: (number | undefined)[] = ways.map(() => undefined);
  const held = new Map<number, number[]>();
  // Takers seen by a failed search lead nowhere later either.
  const exhausted = new Set<number>();
  const place = (wish: number, seen: Set<number>): boolean => {
    const own = ways[wish] ?? [];
    const free = own.find((taker) => (held.get(taker)?.length ?? 0) < (rooms[taker] ?? 0));
    if (free !== undefined) {
      const holders = held.get(free);
      if (holders === undefined) held.set(free, [wish]);
      else holders.push(wish);
      takers[wish] = free;
      return true;
    }
    for (const taker of own) {
      if (seen.has(taker) || exhausted.has(taker)) continue;
      seen.add(taker);
      const holders = held.get(taker) ?? [];
      const moved = holders.findIndex((holder) => place(holder, seen));
      if (moved === -1) continue;
      holders[moved] = wish;
      takers[wish] = taker;
      return true;
    }
    return false;
  };
  for (let wish = 0; wish < ways.length; wish++) {
    const seen = new Set<number>();
    if (!place(wish, seen)) for (const taker of seen) exhausted.add(taker);
  }
  return takers;
}

export function sizeOf(matching: Matching): number {
  return matching.reduce<number>((size, taker) => (taker === undefined ? size : size + 1), 0);
}

/** A set of wishes with too few takers for all of them, by number and in their order. */
export interface Shortfall {
  readonly wishes: readonly number[];
  readonly takers: readonly number[];
  /** The number of these wishes that are left. */
  readonly missing: number;
}

/**
 * The smallest set of wishes that lacks as many takers as the whole does, in parts that share no taker. It is reached
 * from the wishes that are left, over their takers and the wishes that these hold.
 */
export function shortfalls(ways: TakersByWish, matching: Matching): Shortfall[] {
  const held = new Map<number, number[]>();
  const reached = new Set<number>();
  matching.forEach((taker, wish) => {
    if (taker === undefined) reached.add(wish);
    else if (held.has(taker)) held.get(taker)?.push(wish);
    else held.set(taker, [wish]);
  });
  const gone = new Set<number>();
  // Iterating over a set includes what is added meanwhile.
  for (const wish of reached)
    for (const taker of ways[wish] ?? []) {
      if (gone.has(taker)) continue;
      gone.add(taker);
      for (const holder of held.get(taker) ?? []) reached.add(holder);
    }
  return partsOf(ways, [...reached].sort(byNumber)).map((wishes) => ({
    wishes,
    takers: [...new Set(wishes.flatMap((wish) => ways[wish] ?? []))].sort(byNumber),
    missing: wishes.filter((wish) => matching[wish] === undefined).length,
  }));
}

/** The connected parts: wishes in different parts share no taker, not even through others. */
function partsOf(ways: TakersByWish, wishes: readonly number[]): number[][] {
  const above = new Map<number, number>();
  const topOf = (taker: number): number => {
    let top = taker;
    for (let next = above.get(top); next !== undefined; next = above.get(top)) top = next;
    if (top !== taker) above.set(taker, top);
    return top;
  };
  for (const wish of wishes) {
    const [first, ...others] = ways[wish] ?? [];
    for (const other of others) {
      const [a, b] = [topOf(first ?? other), topOf(other)];
      if (a !== b) above.set(b, a);
    }
  }
  const parts = new Map<number | string, number[]>();
  for (const wish of wishes) {
    const first = ways[wish]?.[0];
    const key = first === undefined ? `alone ${wish}` : topOf(first);
    const part = parts.get(key);
    if (part === undefined) parts.set(key, [wish]);
    else part.push(wish);
  }
  return [...parts.values()];
}

function byNumber(a: number, b: number): number {
  return a - b;
}
