/** A rule's page, made from the rule: what it says, why, and examples. */

import { SiteFolder } from '../site/folder.ts';
import { checkBy } from './check.ts';
import { rules } from './index.generated.ts';
import type { Example, Rule } from './rule.ts';

/** A line that marks a range in an example, for its test. */
export const MARK = /^\s*#\s*(\^+|want\s+\d+-\d+)\s.*$/;

/** Markdown. */
export function rulePage(rule: Rule): string {
  const parts = [`# ${rule.id}`, '', `${rule.summary}`, '', `Severity: ${rule.severity}, unless \`lint: rules\` says otherwise.`, '', rule.why.trim(), ''];
  if (rule.source !== undefined) parts.push(`Source: ${rule.source}`, '');
  for (const example of rule.examples) parts.push(...exampleParts(rule, example));
  return `${parts.join('\n').trimEnd()}\n`;
}

function exampleParts(rule: Rule, { bad, good, fixed }: Example): string[] {
  const text = unmarked(bad);
  const messages = messagesOf(rule, text).map((message) => `- ${message}`);
  const right = good !== undefined ? ['But so:', '', ...block(unmarked(good)), ''] : fixed !== undefined ? ['After its fix:', '', ...block(unmarked(fixed)), ''] : [];
  return ['Not so:', '', ...block(text), '', ...messages, '', ...right];
}

/** What the rule says of an example. */
function messagesOf(rule: Rule, text: string): string[] {
  const folder = new SiteFolder();
  folder.set('example.site.yaml', text);
  // A rule that was just written is not in the list yet.
  const all = rules.some(({ id }) => id === rule.id) ? rules : [...rules, rule];
  return checkBy(all, folder).diagnostics.filter((diagnostic) => diagnostic.rule.id === rule.id).map(({ message }) => message);
}

export function unmarked(text: string): string {
  return text.split('\n').filter((line) => !MARK.test(line)).join('\n').trim();
}

function block(text: string): string[] {
  return ['```yaml', text, '```'];
}
