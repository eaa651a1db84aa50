/** Runs the rules over a site, and applies what its `lint` section says of them. */

import type { SiteFolder, SiteText } from '../site/folder.ts';
import { headOf } from '../site/item.ts';
import type { Acceptance } from '../site/model.ts';
import { type Plan, planOf } from '../plan.ts';
import { visible } from '../text/visible.ts';
import { rules } from './index.generated.ts';
import { isHalfRead } from './shape/sound.ts';
import { unusedAcceptance } from './lint/unused-acceptance.ts';
import type { Diagnostic, Finding, Rule, Subject } from './rule.ts';
import { WatchedSubject } from './watched.ts';

/** A site, computed; its rules run when what they find is asked for, or a few at a time by `proceed`. */
export interface Checked {
  readonly plan: Plan;
  readonly files: readonly SiteText[];
  readonly diagnostics: readonly Diagnostic[];
  /** What each rule found, and what it read for it. */
  readonly runs: ReadonlyMap<Rule, Run>;
  /** Runs rules until all have run, or it is `enough`; whether all have. */
  proceed(enough: () => boolean): boolean;
}

interface Run {
  readonly subject: WatchedSubject;
  readonly findings: readonly Finding[];
}

/**
 * Computes and checks a site. What an earlier call returned for the same folder is out of date from then on; given as
 * `previous`, what still holds of it is used again.
 */
export function check(folder: SiteFolder, previous?: Checked): Checked {
  return checkBy(rules, folder, previous);
}

/** The same by rules that need not be those of the list. */
export function checkBy(rules: readonly Rule[], folder: SiteFolder, previous?: Checked): Checked {
  return new Check(rules, folder, previous instanceof Check ? previous : undefined);
}

class Check implements Checked {
  readonly plan: Plan;
  readonly files: readonly SiteText[];
  private readonly subject: Subject;
  /** Of rules that have not run yet what they found in the site before; it is left half-way where an edit comes. */
  private readonly found: Map<Rule, Run>;
  private readonly left: Rule[];
  private told: readonly Diagnostic[] | undefined;

  constructor(rules: readonly Rule[], folder: SiteFolder, previous: Check | undefined) {
    this.files = folder.files;
    this.plan = planOf(folder.site(previous?.plan.site), previous?.plan);
    this.subject = { plan: this.plan, site: this.plan.site, network: this.plan.network, files: this.files };
    this.found = new Map(previous?.found);
    this.left = [...rules].reverse();
  }

  proceed(enough: () => boolean): boolean {
    for (let rule = this.left.pop(); rule !== undefined; rule = this.left.pop()) {
      this.found.set(rule, run(rule, this.subject, this.found.get(rule)));
      if (enough()) break;
    }
    return this.left.length === 0;
  }

  get runs(): ReadonlyMap<Rule, Run> {
    this.proceed(() => false);
    return this.found;
  }

  get diagnostics(): readonly Diagnostic[] {
    return (this.told ??= diagnose(this.subject, this.runs));
  }
}

function run(rule: Rule, subject: Subject, previous: Run | undefined): Run {
  if (previous?.subject.turnTo(subject) === true) return previous;
  const watched = previous?.subject ?? new WatchedSubject(subject);
  watched.forget();
  return { subject: watched, findings: findingsOf(rule, watched.view) };
}

const SYNTAX: ReadonlySet<string> = new Set(['yaml-syntax', 'duplicate-key']);

function diagnose({ site }: Subject, runs: ReadonlyMap<Rule, Run>): Diagnostic[] {
  const { severities, acceptances } = site.lint;
  const used = new Set<Acceptance>();
  const found: Diagnostic[] = [];
  const take = (rule: Rule, finding: Finding): void => {
    const severity = severities.get(rule.id) ?? finding.severity ?? rule.severity;
    if (severity === 'off') return;
    const { fixes } = finding;
    // What is half typed is left to whoever types it, so only a fix of the syntax itself edits it.
    const whole =
      fixes === undefined || SYNTAX.has(rule.id)
        ? fixes
        : () => fixes().filter(({ edits }) => !edits.some(({ at }) => isHalfRead(at)));
    found.push({
      ...finding,
      message: visible(finding.message, LONGEST),
      rule,
      severity,
      ...(whole !== undefined && { fixes: whole }),
    });
  };
  for (const [rule, { findings }] of runs) {
    if (findings.length === 0 || severities.get(rule.id) === 'off') continue;
    const own = acceptances.filter((acceptance) => acceptance.rule === rule.id);
    for (const finding of findings) {
      const accepted = own.filter(({ at }) => finding.about.includes(at));
      for (const acceptance of accepted) used.add(acceptance);
      // Whatever else looks wrong in an item that is half typed is not told beside the fault in its syntax.
      if (accepted.length === 0 && (SYNTAX.has(rule.id) || !isHalfRead(finding.at))) take(rule, finding);
    }
  }
  const unused = acceptances
    .filter((acceptance) => !used.has(acceptance))
    .map((acceptance) => {
      const [, own] = [...runs].find(([{ id }]) => id === acceptance.rule) ?? [];
      return { acceptance, isOff: severities.get(acceptance.rule) === 'off', found: own?.findings ?? [] };
    });
  for (const finding of unusedAcceptance.unused(unused)) take(unusedAcceptance, finding);
  return found;
}

/** A message longer than that has a name or a value in it that nobody reads to its end. */
const LONGEST = 1000;

/** A rule that fails must not silence the others: its failure is told as a finding of its own. */
function findingsOf(rule: Rule, subject: Subject): Finding[] {
  try {
    const found: Finding[] = [];
    rule.check(subject, (finding) => found.push(finding));
    return found;
  } catch (error) {
    const item = subject.site.items[0];
    if (item === undefined) return [];
    const reason = error instanceof Error ? (error.stack ?? error.message) : String(error);
    return [
      {
        at: headOf(item),
        message: `The rule ${rule.id} failed, which is a fault of Plumbline: ${reason}`,
        severity: 'error',
        about: [],
      },
    ];
  }
}
