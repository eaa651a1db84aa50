/**
 * Work that waits for the messages that are there already, so that of a burst of edits only the last is worked on; and
 * that is left when one more comes.
 */

/** Longest that a stream of messages can put the work off, ms. */
const PATIENCE = 500;

/** After so much work messages get a turn, ms. */
const SLICE = 4;

/** A turn of the event loop; a worker in a browser has no `setImmediate`. */
const turn: (then: () => void) => void =
  typeof setImmediate === 'function' ? (then) => setImmediate(then) : (then) => setTimeout(then, 0);

export class Soon {
  private readonly work: (enough: () => boolean) => boolean;
  private armed = 0;
  private since: number | undefined;

  /** @param work works until it is `enough`; returns whether it is done */
  constructor(work: (enough: () => boolean) => boolean) {
    this.work = work;
  }

  /** Each message takes a turn of the loop: who is armed again within two turns waits for two more. */
  arm(): void {
    const now = Date.now();
    this.since ??= now;
    const mine = ++this.armed;
    if (now - this.since > PATIENCE) this.finish();
    else turn(() => turn(() => this.proceed(mine)));
  }

  private proceed(mine: number): void {
    if (mine !== this.armed) return;
    const until = performance.now() + SLICE;
    if (this.work(() => performance.now() > until)) this.since = undefined;
    else turn(() => this.proceed(mine));
  }

  private finish(): void {
    this.work(() => false);
    this.since = undefined;
  }
}
