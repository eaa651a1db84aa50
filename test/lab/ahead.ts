/** Starts work before its result is needed: a few at a time, in order. */

export class Ahead<T> {
  private readonly work: readonly (() => Promise<T>)[];
  private readonly atOnce: number;
  private readonly begun: Promise<T>[] = [];

  constructor(work: readonly (() => Promise<T>)[], atOnce: number) {
    this.work = work;
    this.atOnce = atOnce;
  }

  /** The outcome of the one at `index`; those behind it are under way, up to `atOnce` in all. */
  get(index: number): Promise<T> {
    const begun = this.begin(index);
    for (let next = index + 1; next < index + this.atOnce; next++) if (next < this.work.length) void this.begin(next);
    return begun;
  }

  /** Waits for all work that was started. */
  async ended(): Promise<void> {
    await Promise.allSettled(this.begun);
  }

  private begin(index: number): Promise<T> {
    const known = this.begun[index];
    if (known !== undefined) return known;
    const work = this.work[index];
    if (work === undefined) throw new RangeError(`nothing at ${index}`);
    const begun = work();
    // A failure is reported when the result is asked for.
    begun.catch(() => undefined);
    return (this.begun[index] = begun);
  }
}
