/** What audits have found, kept beside what the rules find until it is cleared or audited anew. */

import type { Audit, AuditKind, Saying } from '../audit/audited.ts';
import { Unreadable } from '../audit/unreadable.ts';
import { clockOf } from '../footage/clock.ts';
import type { Measured } from '../audit/measured.ts';
import { lastResult } from '../memo.ts';
import type { Plan } from '../plan.ts';
import type { Waiting } from '../machine/input.ts';
import type { Checked } from '../lint/check.ts';
import type { Diagnostic } from '../lint/rule.ts';
import type { Place } from '../site/item.ts';

/** What a host has that can read files for audits. */
export type Audits = Readonly<
  Record<AuditKind, (path: string, plan: Plan, saying: Saying, waiting: Waiting) => Promise<Audit>>
>;

/** An edit is waited out for so long before what was read is held against the site again: ms, and times as it takes. */
const REST = 250;
const RESTS = 5;

interface Result {
  readonly audit: Audit;
  /** Kept for the plan that it was asked of last. */
  readonly measured: Audit['measured'];
  /** What was read, and when. */
  readonly from: string;
  readonly at: number;
  plan: Plan;
  found: readonly Diagnostic[];
  took: number;
  timer: ReturnType<typeof setTimeout> | undefined;
}

export class AuditResults {
  private readonly byFolder = new Map<string, Map<AuditKind, Result>>();
  private readonly now: (folder: string) => Plan | undefined;
  private readonly changed: (folder: string) => void;

  /**
   * @param now the plan of a folder as it stands
   * @param changed is called where something else is found than before, without being asked
   */
  constructor(now: (folder: string) => Plan | undefined, changed: (folder: string) => void) {
    this.now = now;
    this.changed = changed;
  }

  /**
   * Takes the place of what an audit of the kind has found before.
   *
   * @param from what was read, in a word
   * @throws Unreadable where it cannot be told what of the site it is
   */
  take(folder: string, kind: AuditKind, audit: Audit, from: string, plan: Plan): readonly string[] {
    const measured = audit.measured === undefined ? undefined : lastResult(audit.measured);
    const result: Result = { audit, measured, from, at: Date.now(), plan, found: [], took: 0, timer: undefined };
    const summary = hold(result, plan);
    const own = this.byFolder.get(folder) ?? new Map<AuditKind, Result>();
    this.byFolder.set(folder, own);
    clearTimeout(own.get(kind)?.timer);
    own.set(kind, result);
    return summary;
  }

  /** What was read for a kind of audit, as the pictures of a plan show it; `undefined` where nothing is held. */
  measured(folder: string, kind: AuditKind, plan: Plan): Measured | undefined {
    const result = this.byFolder.get(folder)?.get(kind);
    return result?.measured?.(plan);
  }

  clear(folder: string): void {
    for (const { timer } of this.byFolder.get(folder)?.values() ?? []) clearTimeout(timer);
    this.byFolder.delete(folder);
  }

  /** What holds of it now: at once what stands in text that was left as it is, and soon after an edit the rest. */
  of(folder: string, { plan, files }: Checked, kind?: AuditKind): readonly Diagnostic[] {
    const results = [...(this.byFolder.get(folder) ?? [])].filter(([own]) => kind === undefined || own === kind);
    if (results.length === 0) return [];
    const pieces = new Set(files.flatMap(({ cut }) => cut.pieces));
    const stands = ({ at }: { readonly at: Place }): boolean => pieces.has(at.piece);
    return results.flatMap(([, result]) => {
      if (result.plan !== plan) this.later(folder, result);
      return result.found
        .filter((diagnostic) => stands(diagnostic) && (diagnostic.related ?? []).every(stands))
        .map((diagnostic) => ({
          ...diagnostic,
          fixes: () => (diagnostic.fixes?.() ?? []).filter(({ edits }) => edits.every(stands)),
        }));
    });
  }

  private later(folder: string, result: Result): void {
    clearTimeout(result.timer);
    result.timer = setTimeout(
      () => {
        const plan = this.now(folder);
        if (plan === undefined || plan === result.plan) return;
        holdAgain(result, plan);
        this.changed(folder);
      },
      Math.max(REST, result.took * RESTS),
    );
  }
}

function hold(result: Result, plan: Plan): readonly string[] {
  const start = performance.now();
  const { found, summary } = result.audit(plan);
  const read = clockOf(plan.site.timezone)(result.at).slice(0, 'yyyy-mm-ddThh:mm'.length).replace('T', ' ');
  const taken = ` (${result.from}, read ${read})`;
  result.plan = plan;
  result.found = found.map((diagnostic) => ({ ...diagnostic, message: diagnostic.message + taken }));
  result.took = performance.now() - start;
  return summary;
}

/** A site that does not have what was read of any more has nothing to tell of it. */
function holdAgain(result: Result, plan: Plan): void {
  try {
    hold(result, plan);
  } catch (error) {
    if (!(error instanceof Unreadable)) throw error;
    Object.assign(result, { plan, found: [] });
  }
}
