/** Random numbers, the same for the same seed (mulberry32, of the public domain). */
export class Random {
  private state: number;

  constructor(seed: number) {
    this.state = seed >>> 0;
  }

  /** From 0 up to 1. */
  next(): number {
    this.state = (this.state + 0x6d2b79f5) >>> 0;
    let mixed = this.state;
    mixed = Math.imul(mixed ^ (mixed >>> 15), mixed | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  }

  /** A whole number from 0 up to `limit`; 0 where there is none. */
  below(limit: number): number {
    return Math.floor(this.next() * limit);
  }

  chance(probability: number): boolean {
    return this.next() < probability;
  }

  pick<T>(from: readonly [T, ...T[]]): T;
  pick<T>(from: readonly T[]): T | undefined;
  pick<T>(from: readonly T[]): T | undefined {
    return from[this.below(from.length)];
  }

  /** A few of a list, in its order. */
  some<T>(from: readonly T[], count: number): T[] {
    if (from.length <= count) return [...from];
    const chosen = new Set<number>();
    while (chosen.size < count) chosen.add(this.below(from.length));
    return from.filter((_, index) => chosen.has(index));
  }
}
