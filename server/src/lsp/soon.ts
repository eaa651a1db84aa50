/** Work that waits for the messages that are there already, so that of a burst of edits only the last is worked on. */

/** Longest that a stream of messages can put the work off, ms. */
const PATIENCE = 100;

/** A turn of the event loop; a worker in a browser has no `setImmediate`. */
const turn: (then: () => void) => void = typeof setImmediate === 'function' ? (then) => setImmediate(then) : (then) => setTimeout(then, 0);

export class Soon {
  private readonly work: () => void;
  private armed = 0;
  private since: number | undefined;

  constructor(work: () => void) {
    this.work = work;
  }

  /** Each message takes a turn of the loop: who is armed again within two turns waits for two more. */
  arm(): void {
    const now = Date.now();
    this.since ??= now;
    if (now - this.since > PATIENCE) {
      this.run();
      return;
    }
    const mine = ++this.armed;
    turn(() => turn(() => {
      if (mine === this.armed) this.run();
    }));
  }

  private run(): void {
    this.armed++;
    this.since = undefined;
    this.work();
  }
}
