/** A rule's page, made from the rule: what it says, why, and examples. */

import type { Example, Rule } from './rule.ts';

/** A line that marks a range in an example, for its test. */
export const MARK = /^\s*#\s*(\^+|want\s+\d+-\d+)\s.*$/;

/** Markdown. */
export function rulePage(rule: Rule): string {
  const parts = [`# ${rule.id}`, '', `${rule.summary}`, '', `Severity: ${rule.severity}, unless \`lint: rules\` says otherwise.`, '', rule.why.trim(), ''];
  if (rule.source !== undefined) parts.push(`Source: ${rule.source}`, '');
  for (const example of rule.examples) parts.push(...exampleParts(example));
  return `${parts.join('\n').trimEnd()}\n`;
}

function exampleParts(example: Example): string[] {
  const right = example.fixed ?? example.good;
  return ['Not so:', '', ...block(unmarked(example.bad)), '', ...(right === undefined ? [] : ['But so:', '', ...block(unmarked(right)), ''])];
}

export function unmarked(text: string): string {
  return text.split('\n').filter((line) => !MARK.test(line)).join('\n').trim();
}

function block(text: string): string[] {
  return ['```yaml', text, '```'];
}
