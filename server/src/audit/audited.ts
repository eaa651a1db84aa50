/** What an audit comes to: how what runs differs from the plan, told at the words of the site that planned it. */

import type { Plan } from '../plan.ts';
import type { Diagnostic } from '../lint/rule.ts';
import type { Measured } from './measured.ts';

export interface Audited {
  readonly found: readonly Diagnostic[];
  /** For the person: what was looked at, and what it came to. */
  readonly summary: readonly string[];
}

export const AUDIT_KINDS = ['recordings', 'counters', 'announcements', 'probe'] as const;

export type AuditKind = (typeof AUDIT_KINDS)[number];

/**
 * What was read, held against a plan: at once, and again after edits of the site.
 *
 * @throws Unreadable where it cannot be told what of the site it is
 */
export interface Audit {
  (plan: Plan): Audited;
  /** What was read, as pictures of the site show it; none where no picture does. */
  readonly measured?: (plan: Plan) => Measured;
}

/** What somebody says besides of the file or folder that they chose. */
export interface Saying {
  /** Which device, stream or volume it is of, where it does not say so itself. */
  readonly of?: string | undefined;
  /** The folder is a copy, so it is as old as its newest file. */
  readonly isCopy?: boolean | undefined;
}
