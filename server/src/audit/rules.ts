/** All rules of audits; `rules` has those of checks. */

import type { RuleInfo } from '../lint/rule.ts';
import { announcementRules } from './announcements/rules.ts';
import { counterRules } from './counters/rules.ts';
import { probeRules } from './probe/rules.ts';
import { recordingRules } from './recordings/rules.ts';

/** Rules by audit, in the order of the pages. */
export const AUDIT_RULES: Readonly<Record<string, Readonly<Record<string, RuleInfo>>>> = {
  announcements: announcementRules,
  counters: counterRules,
  probe: probeRules,
  recordings: recordingRules,
};

export const auditRules: readonly RuleInfo[] = Object.values(AUDIT_RULES).flatMap((own) => Object.values(own));
