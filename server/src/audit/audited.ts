/** The result of an audit: differences between the running system and the plan, reported at the site's text. */

import type { Plan } from '../plan.ts';
import type { Diagnostic } from '../lint/rule.ts';
import type { Measured } from './measured.ts';

export interface Audited {
  readonly found: readonly Diagnostic[];
  /** For the user: what was read, and the result. */
  readonly summary: readonly string[];
}

export const AUDIT_KINDS = ['recordings', 'counters', 'announcements', 'probe'] as const;

export type AuditKind = (typeof AUDIT_KINDS)[number];

/**
 * Compares readings with a plan: once, and again after edits of the site.
 *
 * @throws Unreadable where nothing shows which part of the site it belongs to
 */
export interface Audit {
  (plan: Plan): Audited;
  /** The readings for drawings of the site; absent where no drawing shows them. */
  readonly measured?: (plan: Plan) => Measured;
}

/** The user's answers about the chosen file or folder. */
export interface Saying {
  /** The device, stream or volume that it belongs to, where it does not show that itself. */
  readonly of?: string | undefined;
  /** The folder is a copy, so it is as old as its newest file. */
  readonly isCopy?: boolean | undefined;
}
