/**
 * A rule's view of the site, which notes what the rule reads: as long as all of that stays the same, what the rule
 * found stays so too. The view outlives an edit and then shows the new site, to fixes that are asked for later as well.
 */

import type { RuleContext } from './rule.ts';

/** Something that a rule has read: a key of a part of the site, and what it was then. */
interface Read {
  readonly of: Part;
  readonly key: string | symbol;
  readonly value: unknown;
}

/** Gives a part of the site that changes with each edit. */
type Part = (context: RuleContext) => object;

const PLAN: Part = ({ plan }) => plan;
const SITE: Part = ({ site }) => site;
const SECTIONS: Part = ({ site }) => site.sections;
const NETWORK: Part = ({ network }) => network;

export class WatchedContext {
  readonly view: RuleContext;
  private context: RuleContext;
  /** Few: a rule reads three or four keys. A list that is dropped keeps nothing alive, as an emptied `Map` does. */
  private reads: Read[] = [];

  constructor(context: RuleContext) {
    this.context = context;
    const sections = this.watched(SECTIONS, {});
    const site = this.watched(SITE, { sections });
    const network = this.watched(NETWORK, {});
    const plan = this.watched(PLAN, { site, network });
    this.view = this.watched((whole) => whole, { plan, site, network }) as RuleContext;
  }

  /** Turns to the site after an edit; whether all that was read of the one before is the same in it. */
  turnTo(context: RuleContext): boolean {
    this.context = context;
    for (const { of, key, value } of this.reads) if (Reflect.get(of(context), key) !== value) return false;
    return true;
  }

  /** Before a rule runs anew. */
  forget(): void {
    if (this.reads.length > 0) this.reads = [];
  }

  /** Has the keys of a part as it is now. `inner` keys are views themselves. */
  private watched(of: Part, inner: Readonly<Record<string, object>>): object {
    return new Proxy(inner, { get: (_, key) => Reflect.get(inner, key) ?? this.read(of, key) });
  }

  private read(of: Part, key: string | symbol): unknown {
    const value: unknown = Reflect.get(of(this.context), key);
    if (!this.reads.some((read) => read.key === key && read.of === of)) this.reads.push({ of, key, value });
    return value;
  }
}
