/** The findings of audits, kept beside those of the rules until they are cleared or audited again. */

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

/** Reads the files for each kind of audit, on a host that has a disk. */
export type Audits = Readonly<
  Record<AuditKind, (path: string, plan: Plan, saying: Saying, waiting: Waiting) => Promise<Audit>>
>;

/** Pause after an edit before the readings are audited again: at least so many ms, and so many times the last audit. */
const REST = 250;
const RESTS = 5;

interface Result {
  readonly audit: Audit;
  /** Cached for the last plan. */
  readonly measured: Audit['measured'];
  /** The name of the file or folder, and when it was read. */
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
   * @param changed is called when the findings have changed after an edit
   */
  constructor(now: (folder: string) => Plan | undefined, changed: (folder: string) => void) {
    this.now = now;
    this.changed = changed;
  }

  /**
   * Replaces the findings of the last audit of that kind.
   *
   * @param from the name of the file or folder that was read
   * @throws Unreadable where nothing in it shows which part of the site it belongs to
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

  /** The readings of the last audit of a kind, for drawings of the plan; `undefined` where there was none. */
  measured(folder: string, kind: AuditKind, plan: Plan): Measured | undefined {
    const result = this.byFolder.get(folder)?.get(kind);
    return result?.measured?.(plan);
  }

  clear(folder: string): void {
    for (const { timer } of this.byFolder.get(folder)?.values() ?? []) clearTimeout(timer);
    this.byFolder.delete(folder);
  }

  /** The findings that hold now: at once those in text that was not edited, the rest soon after the edit. */
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

/** Audits again; no findings where the site lacks the audited thing by now. */
function holdAgain(result: Result, plan: Plan): void {
  try {
    hold(result, plan);
  } catch (error) {
    if (!(error instanceof Unreadable)) throw error;
    Object.assign(result, { plan, found: [] });
  }
}
