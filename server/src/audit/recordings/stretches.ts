/** Stretches of time of one kind, in order: how many and how long, with the first, the last and the longest. */

export interface Stretch {
  /** The row of the file that it is reported at. */
  readonly index: number;
  /** Milliseconds since 1970. */
  readonly from: number;
  readonly to: number;
}

export class Stretches {
  count = 0;
  /** Milliseconds. */
  total = 0;
  first: Stretch | undefined;
  last: Stretch | undefined;
  longest: Stretch | undefined;
  /** Takes each stretch that is added, as they are not stored. */
  each: (stretch: Stretch) => void = () => undefined;
  private lastButOne: Stretch | undefined;

  add(stretch: Stretch): void {
    const length = stretch.to - stretch.from;
    this.count++;
    this.each(stretch);
    this.total += length;
    this.first ??= stretch;
    this.lastButOne = this.last;
    this.last = stretch;
    if (this.longest === undefined || length > this.longest.to - this.longest.from) this.longest = stretch;
  }

  /** All but the last one; only for stretches without a length. */
  withoutLast(): Stretches {
    const fewer = new Stretches();
    fewer.count = this.count - 1;
    if (fewer.count > 0) [fewer.first, fewer.last, fewer.longest] = [this.first, this.lastButOne, this.first];
    return fewer;
  }
}
