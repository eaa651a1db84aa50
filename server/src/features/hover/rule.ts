/** A rule, or what an audit finds, by its id. */

import { faults } from '../../audit/faults.ts';
import { rules } from '../../rules/index.generated.ts';

/** Markdown paragraphs of the rule's own text. */
export function ruleText(id: string): string[] {
  const rule = [...rules, ...faults].find((candidate) => candidate.id === id);
  if (rule === undefined) return [];
  return [
    `**${rule.id}** ${rule.summary}`,
    rule.why.trim(),
    `Severity: ${rule.severity}, unless \`lint: rules\` says otherwise.`,
    ...(rule.source === undefined ? [] : [`*${rule.source}*`]),
  ];
}
