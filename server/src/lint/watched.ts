/**
 * A rule's view of the site, which notes what the rule reads: as long as all of that stays the same, what the rule
 * found stays so too. The view outlives an edit and then shows the new site, to fixes that are asked for later as well.
 */

import type { Network } from '../network/network.ts';
import type { Plan } from '../plan.ts';
import type { Site } from '../site/model.ts';
import type { RuleContext } from './rule.ts';

export class WatchedContext {
  readonly view: RuleContext;
  private context: RuleContext;
  private readonly parts: readonly Pick<Watched<object>, 'isAsRead' | 'forget'>[];

  constructor(context: RuleContext) {
    this.context = context;
    const sections = new Watched<Site['sections']>(() => this.context.site.sections);
    const site = new Watched<Site>(() => this.context.site, { sections: sections.view });
    const network = new Watched<Network>(() => this.context.network);
    const plan = new Watched<Plan>(() => this.context.plan, { site: site.view, network: network.view });
    const whole = new Watched<RuleContext>(() => this.context, {
      plan: plan.view,
      site: site.view,
      network: network.view,
    });
    this.view = whole.view;
    this.parts = [sections, site, network, plan, whole];
  }

  /** Turns to the site after an edit; whether all that was read of the one before is the same in it. */
  turnTo(context: RuleContext): boolean {
    this.context = context;
    return this.parts.every((part) => part.isAsRead());
  }

  /** Before a rule runs anew. */
  forget(): void {
    for (const part of this.parts) part.forget();
  }
}

/** An object that changes with each edit, and what was read of it. */
class Watched<T extends object> {
  /** Has the keys of the object as it is now. There is one for each rule, so it costs nothing until it is read. */
  readonly view: T;
  private readonly current: () => T;
  private readonly reads = new Map<keyof T, unknown>();

  /** `inner` keys are views themselves. */
  constructor(current: () => T, inner: Partial<T> = {}) {
    this.current = current;
    const get = (_: object, key: string | symbol): unknown => inner[key as keyof T] ?? this.read(key as keyof T);
    this.view = new Proxy({}, { get }) as T;
  }

  isAsRead(): boolean {
    const current = this.current();
    for (const [key, value] of this.reads) if (current[key] !== value) return false;
    return true;
  }

  forget(): void {
    if (this.reads.size > 0) this.reads.clear();
  }

  private read(key: keyof T): unknown {
    const value = this.current()[key];
    if (!this.reads.has(key)) this.reads.set(key, value);
    return value;
  }
}
