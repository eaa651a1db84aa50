/**
 * The files of a recording as figures of some twenty bytes each, without their names, so that a million take little
 * memory.
 */

import { leastWhere } from '../../text/bisect.ts';

/** Which of two instants a name without an offset means, where the clocks went back. */
export const PASS = { only: 0, undecided: 1, first: 2, second: 3 } as const;

/** Stands for a name without an offset. */
const NONE = -32_768;

export class Rows {
  length = 0;
  private starts = new Float64Array(1024);
  private sizes = new Float64Array(1024);
  private offsets = new Int16Array(1024);
  private passes = new Uint8Array(1024);
  private order: Uint32Array | undefined;

  /** @param start milliseconds since 1970 @param offset minutes east of UTC */
  add(start: number, size: number, offset: number | undefined, pass: number): void {
    if (this.length === this.starts.length) this.grow();
    this.starts[this.length] = start;
    this.sizes[this.length] = size;
    this.offsets[this.length] = offset ?? NONE;
    this.passes[this.length] = pass;
    this.length++;
    this.order = undefined;
  }

  /** The start of a row; rows are in the order of their starts. */
  start(index: number): number {
    return this.starts[this.at(index)] ?? NaN;
  }

  size(index: number): number {
    return this.sizes[this.at(index)] ?? 0;
  }

  offset(index: number): number | undefined {
    const offset = this.offsets[this.at(index)];
    return offset === NONE ? undefined : offset;
  }

  pass(index: number): number {
    return this.passes[this.at(index)] ?? PASS.only;
  }

  /** The number of files that begin before the instant. */
  before(instant: number): number {
    return leastWhere(0, this.length, (index) => this.start(index) >= instant);
  }

  private at(index: number): number {
    this.order ??= this.sorted();
    return this.order[index] ?? 0;
  }

  private sorted(): Uint32Array {
    const { starts, sizes } = this;
    const order = new Uint32Array(this.length).map((_, index) => index);
    return order.sort((a, b) => (starts[a] ?? 0) - (starts[b] ?? 0) || (sizes[a] ?? 0) - (sizes[b] ?? 0));
  }

  private grow(): void {
    const capacity = this.starts.length * 2;
    const larger = <T extends { set(from: T): void }>(made: T, from: T): T => (made.set(from), made);
    this.starts = larger(new Float64Array(capacity), this.starts);
    this.sizes = larger(new Float64Array(capacity), this.sizes);
    this.offsets = larger(new Int16Array(capacity), this.offsets);
    this.passes = larger(new Uint8Array(capacity), this.passes);
  }
}
