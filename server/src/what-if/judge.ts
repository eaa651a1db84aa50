/** Finds the new errors of a changed site, by the rules themselves. */

import { check } from '../check.ts';
import type { Checked } from '../lint/check.ts';
import type { Diagnostic } from '../lint/rule.ts';
import type { Plan } from '../plan.ts';
import type { Item } from '../site/item.ts';
import type { Piece } from '../text/cut.ts';

/** Checks one changed site after another; what they have in common is computed once. */
export class Judge {
  private readonly plan: Plan;
  private last: Checked | undefined;
  private known: ReadonlyMap<Piece, ReadonlySet<string>> | undefined;

  constructor(plan: Plan) {
    this.plan = plan;
  }

  /** The errors of a site of these items that the plan's own site does not have; one that grows worse is new. */
  newErrors(items: readonly Item[]): Diagnostic[] {
    const errors = this.errorsOf(items);
    if (errors.length === 0) return [];
    const known = (this.known ??= byPiece(this.errorsOf(this.plan.site.items)));
    return errors.filter((error) => known.get(error.at.piece)?.has(wordsOf(error)) !== true);
  }

  private errorsOf(items: readonly Item[]): Diagnostic[] {
    this.last = check({ files: [], items }, this.last);
    return this.last.diagnostics.filter(({ severity }) => severity === 'error');
  }
}

function byPiece(errors: readonly Diagnostic[]): Map<Piece, Set<string>> {
  const found = new Map<Piece, Set<string>>();
  for (const error of errors) found.set(error.at.piece, (found.get(error.at.piece) ?? new Set()).add(wordsOf(error)));
  return found;
}

function wordsOf({ rule, at, message }: Diagnostic): string {
  return `${rule.id} ${at.start} ${message}`;
}
