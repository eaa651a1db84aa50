/**
 * Checks of sites that wait for the messages that are there already, so that of a burst of edits only the last is
 * checked; and that are left where they are when one more edit comes.
 */

/** Longest that a stream of edits can put a check off, ms. */
const LONGEST_WAIT = 500;

/** After so much work messages get a turn, ms. */
const SLICE = 4;

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
   * @param check works until it `isEnough`; returns whether it is done, and goes on where it left when called again
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

  /** Each message takes a turn of the loop: a site that is scheduled again within two turns waits for two more. */
  schedule(site: Site): void {
    const due: Due = { since: this.due.get(site)?.since ?? Date.now() };
    this.due.set(site, due);
    if (Date.now() - due.since > LONGEST_WAIT) this.finish(site);
    else nextTurn(() => nextTurn(() => this.proceed(site, due)));
  }

  /** Nothing of the site is checked any more until it is scheduled again. */
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
