/** What an audit found, as the site's `lint` section has it: as grave as it says, and without what it accepts. */

import type { Diagnostic, Fault, Finding } from '../rules/rule.ts';
import type { Site } from '../site/model.ts';
import { visible } from '../text/visible.ts';

export interface Found extends Finding {
  readonly fault: Fault;
}

/** As long as a message of a check may be. */
const LONGEST = 1000;

export function diagnose({ lint: { severities, acceptances } }: Site, found: readonly Found[]): Diagnostic[] {
  return found.flatMap(({ fault, ...finding }): Diagnostic[] => {
    const severity = severities.get(fault.id) ?? finding.severity ?? fault.severity;
    const accepted = acceptances.some(({ rule, at }) => rule === fault.id && finding.about.includes(at));
    if (severity === 'off' || accepted) return [];
    return [{ ...finding, message: visible(finding.message, LONGEST), rule: fault, severity }];
  });
}
