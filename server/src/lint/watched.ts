/**
 * A rule's view of the site, which notes what the rule reads: while all of that stays the same, so do its findings. The
 * view outlives an edit and then shows the new site, also to fixes that are asked for later.
 */

import type { RuleContext } from './rule.ts';

/** Gives a part of the site that changes with each edit. */
type Part = (context: RuleContext) => object;

const WHOLE: Part = (context) => context;
const PLAN: Part = ({ plan }) => plan;
const SITE: Part = ({ site }) => site;
const SECTIONS: Part = ({ site }) => site.sections;
const NETWORK: Part = ({ network }) => network;

/** Something that a rule has read: a key of a part, and its value then. */
interface Read {
  readonly of: Part;
  readonly key: string;
  readonly value: unknown;
}

export class WatchedContext {
  readonly view: RuleContext;
  private context: RuleContext;
  /** A few for each rule. Lists that are dropped as a whole keep nothing alive; an emptied `Map` does. */
  private reads: Read[] = [];

  constructor(context: RuleContext) {
    this.context = context;
    const sections = this.watched(SECTIONS, {});
    const site = this.watched(SITE, { sections });
    const network = this.watched(NETWORK, {});
    const plan = this.watched(PLAN, { site, network });
    this.view = this.watched(WHOLE, { plan, site, network }) as RuleContext;
  }

  /** Turns to the site after an edit; returns whether all that was read before is the same in it. */
  turnTo(context: RuleContext): boolean {
    this.context = context;
    for (const { of, key, value } of this.reads) if (valueOf(of(context), key) !== value) return false;
    return true;
  }

  /** Called before a rule runs anew. */
  forget(): void {
    if (this.reads.length > 0) this.reads = [];
  }

  /** Has the keys of a part as it is now. `inner` keys are views themselves. */
  private watched(of: Part, inner: Readonly<Record<string, object>>): object {
    return new Proxy(inner, {
      get: (_, key) => inner[String(key)] ?? this.read(of, String(key)),
      ownKeys: () => {
        throw new Error('a rule reads keys of its context by name: a copy would be empty');
      },
    });
  }

  private read(of: Part, key: string): unknown {
    for (const read of this.reads) if (read.key === key && read.of === of) return read.value;
    const value = valueOf(of(this.context), key);
    this.reads.push({ of, key, value });
    return value;
  }
}

function valueOf(part: object, key: string): unknown {
  return (part as Readonly<Record<string, unknown>>)[key];
}
