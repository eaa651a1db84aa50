/** The findings of one plan that the other does not have. */

import type { Diagnostic } from '../lint/rule.ts';
import type { Severity } from '../site/model.ts';
import type { Match } from './match.ts';

export interface FindingChange {
  readonly rule: string;
  readonly severity: Severity;
  readonly message: string;
}

export interface FindingChanges {
  readonly new: readonly FindingChange[];
  readonly solved: readonly FindingChange[];
}

/** Two findings are the same if they have the same rule and are about the same things; their figures may differ. */
export function findingChanges(
  before: readonly Diagnostic[],
  after: readonly Diagnostic[],
  { id }: Match,
): FindingChanges {
  const key = ({ rule, acceptAt, severity }: Diagnostic, side: 'before' | 'after'): string =>
    [rule.id, severity, ...[...new Set(acceptAt)].map((name) => id(name, side)).sort()].join('\n');
  const old = counted(before.map((one) => key(one, 'before')));
  const current = counted(after.map((one) => key(one, 'after')));
  return {
    new: without(after, (one) => key(one, 'after'), old),
    solved: without(before, (one) => key(one, 'before'), current),
  };
}

function counted(keys: readonly string[]): Map<string, number> {
  const counts = new Map<string, number>();
  for (const key of keys) counts.set(key, (counts.get(key) ?? 0) + 1);
  return counts;
}

function without(
  all: readonly Diagnostic[],
  key: (one: Diagnostic) => string,
  others: ReadonlyMap<string, number>,
): FindingChange[] {
  const left = new Map(others);
  return all.flatMap((one): FindingChange[] => {
    const own = key(one);
    const number = left.get(own) ?? 0;
    if (number === 0) return [{ rule: one.rule.id, severity: one.severity, message: one.message }];
    left.set(own, number - 1);
    return [];
  });
}
