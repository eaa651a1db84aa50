/**
 * Schedules checks of sites. A check waits for the messages that have already arrived, so that only the last of a burst
 * of edits is checked, and it is interrupted when one more edit comes.
 */

/** The longest that a stream of edits can delay a check, ms. */
const LONGEST_WAIT = 500;

/**
 * Messages get a turn after so much work, ms. A house is checked within one: V8 clears memory between turns, and that
 * should come after the answer.
 */
const SLICE = 8;

/** A turn of the event loop; a worker in a browser has no `setImmediate`. */
export const nextTurn: (then: () => void) => void =
  typeof setImmediate === 'function' ? (then) => setImmediate(then) : (then) => setTimeout(then, 0);

/** A check that is due. */
interface Due {
  /** When it was first asked for, in milliseconds since 1970. */
  readonly since: number;
}

export class CheckScheduler<Site extends object> {
  private readonly check: (site: Site, isEnough: () => boolean) => boolean;
  private readonly waits: (site: Site) => boolean;
  private readonly due = new Map<Site, Due>();
  private awaiting: (() => void)[] = [];

  /**
   * @param check works until `isEnough`; returns whether it is done, and continues when called again
   * @param waits whether a site lets the others go first
   */
  constructor(check: (site: Site, isEnough: () => boolean) => boolean, waits: (site: Site) => boolean) {
    this.check = check;
    this.waits = waits;
  }

  /** Resolves when no check is due. */
  idle(): Promise<void> {
    return new Promise((resolve) => {
      this.awaiting.push(resolve);
      this.wakeIfIdle();
    });
  }

  private wakeIfIdle(): void {
    if (this.due.size === 0) for (const wake of this.awaiting.splice(0)) wake();
  }

  private done(site: Site): void {
    this.due.delete(site);
    this.wakeIfIdle();
  }

  /** A message takes one turn of the event loop: a site scheduled again within two turns waits for two more. */
  schedule(site: Site): void {
    const due: Due = { since: this.due.get(site)?.since ?? Date.now() };
    this.due.set(site, due);
    if (Date.now() - due.since > LONGEST_WAIT) this.finish(site);
    else nextTurn(() => nextTurn(() => this.proceed(site, due)));
  }

  /** Cancels the check of the site. */
  forget(site: Site): void {
    this.done(site);
  }

  private proceed(site: Site, due: Due): void {
    if (this.due.get(site) !== due) return;
    const until = performance.now() + SLICE;
    const isBehind = this.waits(site) && [...this.due.keys()].some((other) => !this.waits(other));
    if (!isBehind && this.check(site, () => performance.now() > until)) this.done(site);
    else nextTurn(() => this.proceed(site, due));
  }

  private finish(site: Site): void {
    this.check(site, () => false);
    this.done(site);
  }
}
