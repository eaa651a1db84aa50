/**
 * A rule's view of the site, which notes what the rule reads: as long as all of that stays the same, what the rule
 * found stays so too. The view outlives an edit and then shows the new site, to fixes that are asked for later as well.
 */

import type { Network } from '../network/network.ts';
import type { Plan } from '../plan.ts';
import type { Site } from '../site/model.ts';
import type { Subject } from './rule.ts';

type Read = () => unknown;

export class WatchedSubject {
  readonly view: Subject;
  private subject: Subject;
  private readonly reads = new Map<Read, unknown>();

  constructor(subject: Subject) {
    this.subject = subject;
    const sections = this.watch(subject.site.sections, () => this.subject.site.sections);
    const site: Site = this.watch(subject.site, () => this.subject.site, { sections });
    const network: Network = this.watch(subject.network, () => this.subject.network);
    const plan: Plan = this.watch(subject.plan, () => this.subject.plan, { site, network });
    this.view = this.watch(subject, () => this.subject, { plan, site, network });
  }

  /** Turns to the site after an edit; whether all that was read of the one before is the same in it. */
  turnTo(subject: Subject): boolean {
    this.subject = subject;
    for (const [read, value] of this.reads) if (read() !== value) return false;
    return true;
  }

  /** Before a rule runs anew. */
  forget(): void {
    this.reads.clear();
  }

  /** An object with the keys of `shape`, each read from what `current` gives; `inner` keys are views themselves. */
  private watch<T extends object>(shape: T, current: () => T, inner: Partial<T> = {}): T {
    const view = {};
    for (const key of Object.keys(shape) as (keyof T & string)[]) {
      const own = inner[key];
      const read: Read = () => current()[key];
      const get = (): unknown => {
        if (own !== undefined) return own;
        const value = read();
        if (!this.reads.has(read)) this.reads.set(read, value);
        return value;
      };
      Object.defineProperty(view, key, { get, enumerable: true });
    }
    return view as T;
  }
}
