/** The bit rate of a recording: the bytes of its whole segments over their time. */

export interface Rate {
  readonly bytes: number;
  readonly milliseconds: number;
  /** bit/s: over all segments; of the median segment; of the busiest one. */
  readonly mean: number;
  readonly median: number;
  readonly busiest: number;
  /** bit/s by which the mean may be off, as names are rounded. */
  readonly error: number;
}

export class RateSum {
  /** bit/s of the last whole segment. */
  recent: number | undefined;
  private bytes = 0;
  private milliseconds = 0;
  private runs = 0;
  private running = false;
  private rates = new Float64Array(1024);
  private count = 0;
  private readonly rounding: number;

  /** @param rounding milliseconds by which the time of a run of segments may be off */
  constructor(rounding: number) {
    this.rounding = rounding;
  }

  add(bytes: number, milliseconds: number): void {
    if (bytes === 0 || milliseconds <= 0) return this.interrupt();
    if (!this.running) this.runs++;
    this.running = true;
    this.bytes += bytes;
    this.milliseconds += milliseconds;
    this.recent = (bytes * 8000) / milliseconds;
    if (this.count === this.rates.length) {
      const larger = new Float64Array(this.count * 2);
      larger.set(this.rates);
      this.rates = larger;
    }
    this.rates[this.count++] = this.recent;
  }

  interrupt(): void {
    this.running = false;
  }

  /** `undefined` where there was no whole segment. */
  end(): Rate | undefined {
    if (this.count === 0) return undefined;
    const { bytes, milliseconds } = this;
    const mean = (bytes * 8000) / milliseconds;
    const rates = this.rates.subarray(0, this.count).sort();
    const shortest = milliseconds - Math.min(this.runs * this.rounding, milliseconds / 2);
    return {
      bytes,
      milliseconds,
      mean,
      median: rates[Math.floor(this.count / 2)] ?? mean,
      busiest: rates[this.count - 1] ?? mean,
      error: (bytes * 8000) / shortest - mean,
    };
  }
}
