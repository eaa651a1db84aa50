/** What a rule is, and what it finds. */

import type { Network } from '../network/network.ts';
import type { Plan } from '../plan.ts';
import type { Fix } from '../site/edit.ts';
import type { SiteText } from '../site/folder.ts';
import type { Place } from '../site/item.ts';
import type { Acceptance, Severity, Site } from '../site/model.ts';
import type { NamedSection } from '../site/declared.ts';

/**
 * When a finding is shown while somebody types in its item: something that is only missing waits.
 * - `keystroke`: it stays wrong whatever is typed next.
 * - `value`: the cursor has left the value or key where it stands; more characters can make that right.
 * - `line`: the cursor has left the line.
 * - `item`: the cursor has left the item; more keys can make it right.
 * - `pause`: nothing has been typed for a second; other items can make it right.
 */
export type ShowAfter = 'keystroke' | 'value' | 'line' | 'item' | 'pause';

/** The properties that rules and kinds of audit findings share: all but how they find. */
export interface RuleInfo {
  /** Also the name of its file, of its page, and its key under `lint: rules`. */
  readonly id: string;
  readonly severity: Severity;
  /** One line: what is wrong where the rule reports. */
  readonly summary: string;
  /** What happens if it is left so, and what to do; Markdown. */
  readonly why: string;
  /** The standard behind it, with its section; or "common practice". */
  readonly source?: string;
  /** It finds slips of spelling, syntax or units, which are corrected and never accepted. */
  readonly isSlip?: boolean;
  /** When its findings are shown during typing; `pause` by default. */
  readonly showAfter?: ShowAfter;
}

/** A rule's file also exports its `examples`, for tests and its page; the programs leave them out. */
export interface Rule extends RuleInfo {
  check(context: RuleContext, report: Report): void;
}

/** A rule about the acceptances of the site, which runs after all others. */
export interface AcceptanceRule extends RuleInfo {
  checkUnused(unused: readonly UnusedAcceptance[], report: (finding: Finding) => void): void;
}

/** The most related places that a finding shows; its message gives their number. */
export const MOST_RELATED = 5;

/** Takes a finding. (Rules are no generators: those take about four times as long, at every keystroke.) */
export type Report = (finding: Finding | Unworded) => void;

/** A finding whose message takes long to make; of thousands, only those that are shown get one. */
export interface Unworded {
  readonly at: Place;
  readonly word: () => Finding;
}

/**
 * A site in which the rule finds something, and how it is right. In `bad` a comment line `# ^^^^ part of the message`
 * below a line marks the range of each finding; the page leaves the marks out. `fixed` is `bad` after the first fix.
 * In `good` the rule finds nothing; without it, in `fixed`.
 */
export interface Example {
  readonly bad: string;
  readonly good?: string;
  readonly fixed?: string;
}

/** The input of rules. */
export interface RuleContext {
  readonly plan: Plan;
  readonly site: Site;
  readonly network: Network;
  readonly files: readonly SiteText[];
  /** Ids that the site may set and accept: of all rules, and of what audits find. */
  readonly ruleIds: ReadonlySet<string>;
}

/** An acceptance that matches no finding. */
export interface UnusedAcceptance {
  readonly acceptance: Acceptance;
  /** The site turns its rule off. */
  readonly isOff: boolean;
  /** The findings of its rule at other places. */
  readonly found: readonly Finding[];
}

export interface Finding {
  readonly at: Place;
  /** What is wrong, with the figures, and what to do. */
  readonly message: string;
  /** Set where this finding is more or less severe than the rule's default. */
  readonly severity?: Severity;
  /** Set where this finding is shown sooner or later than the rule's default. */
  readonly showAfter?: ShowAfter;
  /** What may be written yet and makes it right: while that section is being written, this may wait for a pause. */
  readonly awaits?: Awaited;
  /** Names that an acceptance may give for it: devices, `device/port`, streams … The first is the usual one. */
  readonly acceptAt: readonly string[];
  /** Further places; the first `MOST_RELATED` are shown. */
  readonly related?: readonly Related[];
  /**
   * What this finding reports, where it may be an effect of another finding: one whose effects are all entailed by
   * others is left out. Both are compared by identity, so they are values of the plan: an `Unreached`, a load.
   */
  readonly effects?: readonly object[];
  /** The effects of the mistake that is reported here. */
  readonly entails?: readonly object[];
  /** A schema cannot express this finding, although the rule otherwise repeats the schema. */
  readonly beyondSchema?: boolean;
  /** Computed only when asked for. Where only safe ones are wanted, others may be left out. */
  readonly fixes?: (wanted?: 'safe') => readonly Fix[];
}

/** Something that is named before it is declared. */
export interface Awaited {
  readonly section: NamedSection;
  /** Another name of that section is meant, by all appearances: one that differs by a slip. */
  readonly isSlip: boolean;
  /** In the usual order of sections it stands above. */
  readonly isAbove: boolean;
}

export interface Related {
  readonly at: Place;
  readonly message: string;
}

/** A finding of a rule or an audit. */
export interface Found extends Finding {
  readonly rule: RuleInfo;
}

/** A finding that is not accepted, with the severity that the site sets. */
export interface Diagnostic extends Found {
  readonly severity: Severity;
}
