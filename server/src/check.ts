/** Checks a site by all rules there are. */

import { auditRules } from './audit/rules.ts';
import { type Checkable, type Checked, type Rules, checkBy } from './lint/check.ts';
import { type ChooseFix, type Fixed, MOST_FIXES, fixAllBy, safeFix } from './lint/fix-all.ts';
import type { RuleInfo } from './lint/rule.ts';
import { acceptanceRules, rules } from './rules/index.generated.ts';
import type { SiteFolder } from './site/folder.ts';

/** What checks find, then what audits find, by id. */
export const ruleById: ReadonlyMap<string, RuleInfo> = new Map(
  [...rules, ...acceptanceRules, ...auditRules].map((rule) => [rule.id, rule]),
);

const ALL: Rules = { rules, acceptanceRules, ids: new Set(ruleById.keys()) };

const TO_FIX: Rules = { ...ALL, bounds: { most: 2 * MOST_FIXES, named: 2 * MOST_FIXES } };

const BOUNDED: Rules = { ...ALL, bounds: { most: 1000, named: 100 } };

/**
 * Computes and checks a site. What an earlier call returned for the same folder is out of date afterwards; given as
 * `previous`, what still holds of it is used again.
 */
export function check(folder: Checkable, previous?: Checked): Checked {
  return checkBy(BOUNDED, folder, previous);
}

/** Applies the fixes that `choose` takes, safe ones if it is not given. Changes the texts of `folder`. */
export function fixAll(folder: SiteFolder, choose: ChooseFix = safeFix): Fixed {
  return fixAllBy((site, found, previous) => checkBy(found === 'all' ? ALL : TO_FIX, site, previous), folder, choose);
}
