/** A rule of the checks or of an audit, by its id. */

import { ruleById } from '../../check.ts';

/** Markdown paragraphs of the rule's own text. */
export function ruleText(id: string): string[] {
  const rule = ruleById.get(id);
  if (rule === undefined) return [];
  return [
    `**${rule.id}** ${rule.summary}`,
    rule.why.trim(),
    `Severity: ${rule.severity}, unless \`lint: rules\` says otherwise.`,
    ...(rule.source === undefined ? [] : [`*${rule.source}*`]),
  ];
}
