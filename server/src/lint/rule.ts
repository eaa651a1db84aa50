/** What a rule is, and what it finds. */

import type { Network } from '../network/network.ts';
import type { Plan } from '../plan.ts';
import type { Fix } from '../site/edit.ts';
import type { SiteText } from '../site/folder.ts';
import type { Place } from '../site/item.ts';
import type { Acceptance, Severity, Site } from '../site/model.ts';
import type { NamedSection } from '../site/declared.ts';

/**
 * When a finding is told while somebody types in its item: what is merely still missing waits.
 * - `now`: it stays wrong whatever is typed next.
 * - `value`: the cursor has left the value or key where it stands; more characters can make that right.
 * - `line`: the cursor has left the line.
 * - `item`: the cursor has left the item; more keys can make it right.
 * - `pause`: nothing has been typed for a second; other items can make it right.
 */
export type Due = 'now' | 'value' | 'line' | 'item' | 'pause';

/** What a rule and a kind of an audit's findings have in common: all of it but how it is found. */
export interface RuleInfo {
  /** Also the name of its file, of its page, and its key under `lint: rules`. */
  readonly id: string;
  readonly severity: Severity;
  /** One line: what is wrong where it reports. */
  readonly summary: string;
  /** What happens if it stays so, and what to do; Markdown. */
  readonly why: string;
  /** The standard behind it, with its section; or "common practice". */
  readonly source?: string;
  /** It finds slips of spelling, of syntax or of a unit, which are put right: nobody accepts them. */
  readonly isSlip?: boolean;
  /** When its findings are told while somebody types there; `pause` if it does not say. */
  readonly due?: Due;
}

/** A rule's file also exports its `examples`, for tests and its page; they are no part of the programs. */
export interface Rule extends RuleInfo {
  check(context: RuleContext, report: Report): void;
}

/** A rule about the acceptances of the site, which runs after all others. */
export interface AcceptanceRule extends RuleInfo {
  checkUnused(unused: readonly UnusedAcceptance[], report: (finding: Finding) => void): void;
}

/** Takes a finding. (Rules are no generators: those take about four times as long, at every keystroke.) */
export type Report = (finding: Finding | Unworded) => void;

/** A finding that takes long to word; where there are thousands, only those that are told are worded. */
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

/** What rules look at. */
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
  /** What its rule finds, at other places. */
  readonly found: readonly Finding[];
}

export interface Finding {
  readonly at: Place;
  /** What is wrong, with the figures, and what to do. */
  readonly message: string;
  /** Where this finding is more or less grave than the rule is by default. */
  readonly severity?: Severity;
  /** Where this finding is told sooner or later than the rule says. */
  readonly due?: Due;
  /** What may be written yet and makes it right: while that section is being written, this may wait for a pause. */
  readonly awaits?: Awaited;
  /** Names that an acceptance may give for it: devices, `device/port`, streams … The first is the usual one. */
  readonly about: readonly string[];
  readonly related?: readonly Related[];
  /**
   * What is told here, where it may follow from something else that is told: a finding whose effects are all entailed
   * by others is left out. Both are known by identity, so they are values of the plan: an `Unreached`, a load.
   */
  readonly effects?: readonly object[];
  /** What follows from the mistake that is told here. */
  readonly entails?: readonly object[];
  /** A schema cannot express it, although the rule is one that says what the schema says too. */
  readonly beyondSchema?: boolean;
  /** Computed when somebody asks for them. */
  readonly fixes?: () => readonly Fix[];
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

/** What is found and not accepted, with the severity that the site sets. */
export interface Diagnostic extends Found {
  readonly severity: Severity;
}
