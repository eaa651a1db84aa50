/** Runs rules over a site, and applies its `lint` section to what they find. */

import { lastResult } from '../memo.ts';
import { NONE } from '../none.ts';
import { type Plan, planner } from '../plan.ts';
import type { SiteFolder, SiteText } from '../site/folder.ts';
import { isHalfRead } from '../site/half-read.ts';
import { type Item, namePlace } from '../site/item.ts';
import type { Acceptance, Lint } from '../site/model.ts';
import { type FindingBounds, BoundedFindings, UNBOUNDED } from './bounded.ts';
import { diagnose } from './diagnose.ts';
import type {
  AcceptanceRule,
  Diagnostic,
  Finding,
  Found,
  Rule,
  RuleContext,
  RuleInfo,
  UnusedAcceptance,
} from './rule.ts';
import { WatchedContext } from './watched.ts';

/** The rules to check by. */
export interface Rules {
  readonly rules: readonly Rule[];
  /** Run last, over acceptances that matched nothing. */
  readonly acceptanceRules: readonly AcceptanceRule[];
  /** The ids of these rules, and of the findings of audits. */
  readonly ids: ReadonlySet<string>;
  readonly bounds?: FindingBounds;
}

/** A site, computed; its rules run when what they find is asked for, or a few at a time by `proceed`. */
export interface Checked {
  readonly plan: Plan;
  readonly files: readonly SiteText[];
  readonly diagnostics: readonly Diagnostic[];
  /** What each rule found, and what it read for it. */
  readonly runs: ReadonlyMap<Rule, Run>;
  /** Runs rules until all have run, or `enough` returns true. Returns whether all have run. */
  proceed(enough: () => boolean): boolean;
}

interface Run {
  readonly context: WatchedContext;
  readonly findings: readonly Finding[];
  /** Whether the rule finds more than is given. */
  readonly isCut: boolean;
  /** The diagnostics of the findings under a `lint` section; computed once for the same section. */
  readonly diagnosed: (lint: Lint) => Diagnosed;
}

interface Diagnosed {
  readonly diagnostics: readonly Diagnostic[];
  /** The acceptances that match a finding. */
  readonly used: ReadonlySet<Acceptance>;
}

/** What is checked: the files of a site and their items, or items that no file holds. */
export type Checkable = Pick<SiteFolder, 'files' | 'items'>;

/**
 * Computes and checks a site. `previous` is the result of an earlier call for the same folder; the parts of it that
 * still hold are reused.
 */
export function checkBy(rules: Rules, folder: Checkable, previous?: Checked): Checked {
  return new Check(rules, folder, previous instanceof Check ? previous : undefined);
}

class Check implements Checked {
  readonly plan: Plan;
  readonly files: readonly SiteText[];
  /** Plans the edited site, and keeps what an edit leaves unchanged. */
  private readonly planOf: (items: readonly Item[]) => Plan;
  private readonly context: RuleContext;
  private readonly rules: Rules;
  /** Results by rule; those of rules that have not run yet are from before the edit. */
  private readonly found: Map<Rule, Run>;
  private readonly left: Rule[];
  private known: readonly Diagnostic[] | undefined;

  constructor(rules: Rules, folder: Checkable, previous: Check | undefined) {
    this.files = folder.files;
    this.planOf = previous?.planOf ?? planner();
    this.plan = this.planOf(folder.items);
    const { site, network } = this.plan;
    this.context = { plan: this.plan, site, network, files: this.files, ruleIds: rules.ids };
    this.rules = rules;
    // What was cut by other bounds is found anew.
    this.found = new Map(
      previous?.rules === rules ? previous.found : [...(previous?.found ?? [])].filter(([, { isCut }]) => !isCut),
    );
    this.left = [...rules.rules].reverse();
  }

  proceed(enough: () => boolean): boolean {
    for (let rule = this.left.pop(); rule !== undefined; rule = this.left.pop()) {
      this.found.set(rule, run(rule, this.rules, this.context, this.found.get(rule)));
      if (enough()) break;
    }
    return this.left.length === 0;
  }

  get runs(): ReadonlyMap<Rule, Run> {
    this.proceed(() => false);
    return this.found;
  }

  get diagnostics(): readonly Diagnostic[] {
    return (this.known ??= diagnosticsOf(this.context, this.runs, this.rules));
  }
}

function run(rule: Rule, { bounds }: Rules, context: RuleContext, previous: Run | undefined): Run {
  if (previous?.context.turnTo(context) === true) return previous;
  const watched = previous?.context ?? new WatchedContext(context);
  watched.forget();
  const { findings, isCut } = findingsOf(rule, watched.view, bounds);
  if (findings.length === 0) return { context: watched, findings, isCut, diagnosed: () => NOTHING };
  return { context: watched, findings, isCut, diagnosed: lastResult((lint: Lint) => diagnosed(lint, rule, findings)) };
}

const NOTHING: Diagnosed = { diagnostics: NONE, used: new Set() };

function diagnosed(lint: Lint, rule: RuleInfo, findings: readonly Finding[]): Diagnosed {
  const used = new Set<Acceptance>();
  const found = findings.flatMap((finding) => besideSyntax(finding, rule));
  return { diagnostics: diagnose(lint, found, used), used };
}

/** A rule that fails must not silence the others: its failure is a finding of its own. */
function findingsOf(
  rule: Rule,
  context: RuleContext,
  bounds: FindingBounds | undefined,
): Pick<Run, 'findings' | 'isCut'> {
  const found = new BoundedFindings(bounds ?? UNBOUNDED);
  try {
    rule.check(context, (finding) => found.take(finding));
    return { findings: found.findings(), isCut: found.isCut };
  } catch (error) {
    const item = context.site.items[0];
    if (item === undefined) return { findings: [], isCut: false };
    const reason = error instanceof Error ? (error.stack ?? error.message) : String(error);
    const message = `The rule ${rule.id} failed, which is a fault of Plumbline: ${reason}`;
    return { findings: [{ at: namePlace(item), message, severity: 'error', acceptAt: [] }], isCut: false };
  }
}

function diagnosticsOf(
  { site: { lint } }: RuleContext,
  runs: ReadonlyMap<Rule, Run>,
  { acceptanceRules }: Rules,
): readonly Diagnostic[] {
  const own: Diagnosed[] = [];
  for (const run of runs.values()) if (run.findings.length > 0) own.push(run.diagnosed(lint));
  const used = new Set(own.flatMap((one) => [...one.used]));
  const unused = lint.acceptances
    .filter((acceptance) => !used.has(acceptance))
    .flatMap((acceptance): UnusedAcceptance[] => {
      const [, ran] = [...runs].find(([{ id }]) => id === acceptance.rule) ?? [];
      const isOff = lint.severities.get(acceptance.rule) === 'off';
      return ran === undefined || ran.isCut ? [] : [{ acceptance, isOff, found: ran.findings }];
    });
  const ofUnused: Found[] = [];
  for (const rule of acceptanceRules)
    rule.checkUnused(unused, (finding) => ofUnused.push(...besideSyntax(finding, rule)));
  return withoutEffects([...own.flatMap(({ diagnostics }) => diagnostics), ...diagnose(lint, ofUnused)]);
}

/**
 * One cause, one finding: an effect of a mistake is reported with the mistake, unless the site has turned off or
 * accepted that one. An effect of something that is left out is left out too. Of two that are effects of each other,
 * the first is reported.
 */
function withoutEffects(diagnostics: readonly Diagnostic[]): readonly Diagnostic[] {
  const entailed = new Set<object>();
  const leftOut = new Set<Diagnostic>();
  let left: readonly Diagnostic[] = diagnostics.filter(({ effects }) => effects !== undefined && effects.length > 0);
  if (left.length === 0) return diagnostics;
  const add = ({ entails = [] }: Diagnostic): void => entails.forEach((effect) => entailed.add(effect));
  for (const diagnostic of diagnostics) if ((diagnostic.effects ?? []).length === 0) add(diagnostic);
  while (left.length > 0) {
    const explained = left.filter(({ effects = [] }) => effects.every((effect) => entailed.has(effect)));
    for (const diagnostic of explained) leftOut.add(diagnostic);
    const open = left.filter((diagnostic) => !leftOut.has(diagnostic));
    const entailing = new Map<object, Set<Diagnostic>>();
    for (const diagnostic of open)
      for (const effect of diagnostic.entails ?? [])
        entailing.set(effect, (entailing.get(effect) ?? new Set()).add(diagnostic));
    const isOpen = (effect: object, own: Diagnostic): boolean =>
      entailed.has(effect) || (entailing.get(effect)?.size ?? 0) > (own.entails?.includes(effect) === true ? 1 : 0);
    const causes = open.filter((own) => !(own.effects ?? []).every((effect) => isOpen(effect, own)));
    const told = explained.length > 0 ? [] : causes.length > 0 ? causes : open.slice(0, 1);
    for (const diagnostic of [...explained, ...told]) add(diagnostic);
    const done = new Set(told);
    left = open.filter((diagnostic) => !done.has(diagnostic));
  }
  return diagnostics.filter((diagnostic) => !leftOut.has(diagnostic));
}

const SYNTAX: ReadonlySet<string> = new Set(['yaml-syntax', 'duplicate-key']);

/** In half-typed text only rules of the syntax report, and only their fixes edit it. */
function besideSyntax(finding: Finding, rule: RuleInfo): Found[] {
  if (SYNTAX.has(rule.id)) return [{ rule, ...finding }];
  const { at, fixes } = finding;
  if (isHalfRead(at)) return [];
  if (fixes === undefined) return [{ rule, ...finding }];
  const sound: Finding['fixes'] = (wanted) =>
    fixes(wanted).filter(({ edits }) => !edits.some((edit) => isHalfRead(edit.at)));
  return [{ rule, ...finding, fixes: sound }];
}
