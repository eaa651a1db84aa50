/** Applies a site's `lint` section to the findings of rules and audits. */

import { grouped } from '../grouped.ts';
import type { Acceptance, Lint } from '../site/model.ts';
import { visible } from '../text/visible.ts';
import { type Diagnostic, type Found, MOST_RELATED } from './rule.ts';

/** The most characters of a message: a longer one holds a name or a value that nobody reads to its end. */
const LONGEST = 1000;

/** The findings that the site neither turns off nor accepts, with severities. Adds matching acceptances to `used`. */
export function diagnose(
  { severities, acceptances }: Lint,
  found: Iterable<Found>,
  used: Set<Acceptance> = new Set(),
): Diagnostic[] {
  const byRule = acceptances.length === 0 ? undefined : grouped(acceptances, ({ rule }) => rule);
  const diagnostics: Diagnostic[] = [];
  for (const finding of found) {
    const { rule, acceptAt } = finding;
    const severity = severities.get(rule.id) ?? finding.severity ?? rule.severity;
    if (severity === 'off') continue;
    const accepted = byRule?.get(rule.id)?.filter(({ at }) => acceptAt.includes(at)) ?? [];
    for (const acceptance of accepted) used.add(acceptance);
    if (accepted.length > 0) continue;
    const diagnostic: { -readonly [K in keyof Diagnostic]: Diagnostic[K] } = { severity, ...finding };
    diagnostic.severity = severity;
    diagnostic.message = visible(finding.message, LONGEST);
    if (finding.related !== undefined) diagnostic.related = finding.related.slice(0, MOST_RELATED);
    diagnostics.push(diagnostic);
  }
  return diagnostics;
}
