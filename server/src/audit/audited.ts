/** What an audit comes to: how what runs differs from the plan, told at the words of the site that planned it. */

import type { Diagnostic } from '../rules/rule.ts';

export interface Audited {
  readonly found: readonly Diagnostic[];
  /** For the person: what was looked at, and what it came to. */
  readonly summary: readonly string[];
}
