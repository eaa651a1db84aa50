/**
 * Who is given what, one each: a maximum matching of a bipartite graph, and who is left without.
 *
 * Augmenting paths (Berge 1957) and the theorem of Hall (1935), from memory.
 */

/** The takers that each of some wishes may be given to, as numbers from 0. */
export type Ways = readonly (readonly number[])[];

/** By wish, the taker that it is given to. */
export type Matching = readonly (number | undefined)[];

/** With as many given as can be; the first wishes and the first takers come first. */
export function maximumMatching(ways: Ways): Matching {
  const takers: (number | undefined)[] = ways.map(() => undefined);
  const holders = new Map<number, number>();
  // What a search in vain has seen leads nowhere later either.
  const exhausted = new Set<number>();
  const place = (wish: number, seen: Set<number>): boolean => {
    const own = ways[wish] ?? [];
    const free = own.find((taker) => !holders.has(taker));
    const give = (taker: number): true => {
      holders.set(taker, wish);
      takers[wish] = taker;
      return true;
    };
    if (free !== undefined) return give(free);
    for (const taker of own) {
      if (seen.has(taker) || exhausted.has(taker)) continue;
      seen.add(taker);
      const holder = holders.get(taker);
      if (holder !== undefined && place(holder, seen)) return give(taker);
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

/** Wishes that are more than the takers that could be given any of them, by number and in their order. */
export interface Shortfall {
  readonly wishes: readonly number[];
  readonly takers: readonly number[];
  /** Wishes of them that are left. */
  readonly missing: number;
}

/**
 * The smallest set of wishes that lacks as many takers as the whole does, in parts that share no taker: what is reached
 * from the wishes that are left, over takers of theirs and what these are given instead.
 */
export function shortfalls(ways: Ways, matching: Matching): Shortfall[] {
  const holders = new Map<number, number>();
  const reached = new Set<number>();
  matching.forEach((taker, wish) => {
    if (taker === undefined) reached.add(wish);
    else holders.set(taker, wish);
  });
  // A set gives what is added while it is gone through.
  for (const wish of reached)
    for (const taker of ways[wish] ?? []) {
      const holder = holders.get(taker);
      if (holder !== undefined) reached.add(holder);
    }
  return partsOf(ways, [...reached].sort(byNumber)).map((wishes) => ({
    wishes,
    takers: [...new Set(wishes.flatMap((wish) => ways[wish] ?? []))].sort(byNumber),
    missing: wishes.filter((wish) => matching[wish] === undefined).length,
  }));
}

/** Wishes apart where they have no taker in common, not even over others. */
function partsOf(ways: Ways, wishes: readonly number[]): number[][] {
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
