/** The page of a rule or of an audit's finding, as Markdown. */

import { SiteFolder } from '../src/site/folder.ts';
import { checkBy } from '../src/rules/check.ts';
import { rules } from '../src/rules/index.generated.ts';
import type { Example, Fault, Rule } from '../src/rules/rule.ts';

/** A line that marks a range in an example, for its test. */
const MARK = /^\s*#\s*(\^+|want\s+\d+-\d+)\s.*$/;

export function rulePage(rule: Rule, examples: readonly Example[]): string {
  return page([...faultParts(rule), ...examples.flatMap((example) => exampleParts(rule, example))]);
}

export function faultPage(fault: Fault): string {
  return page(faultParts(fault));
}

function page(parts: readonly string[]): string {
  return `${parts.join('\n').trimEnd()}\n`;
}

function faultParts({ id, summary, severity, why, source }: Fault): string[] {
  const parts = [
    `# ${id}`,
    '',
    summary,
    '',
    `Severity: ${severity}, unless \`lint: rules\` says otherwise.`,
    '',
    why.trim(),
    '',
  ];
  return source === undefined ? parts : [...parts, `Source: ${source}`, ''];
}

function exampleParts(rule: Rule, { bad, good, fixed }: Example): string[] {
  const text = unmarked(bad);
  const messages = messagesOf(rule, text).map((message) => `- ${message}`);
  const right =
    good !== undefined
      ? ['But so:', '', ...block(unmarked(good)), '']
      : fixed !== undefined
        ? ['After its fix:', '', ...block(unmarked(fixed)), '']
        : [];
  return ['Not so:', '', ...block(text), '', ...messages, '', ...right];
}

/** What the rule says of an example. */
function messagesOf(rule: Rule, text: string): string[] {
  const folder = new SiteFolder();
  folder.set('example.site.yaml', text);
  // A rule that was just written is not in the list yet.
  const all = rules.some(({ id }) => id === rule.id) ? rules : [...rules, rule];
  return checkBy(all, folder)
    .diagnostics.filter((diagnostic) => diagnostic.rule.id === rule.id)
    .map(({ message }) => message);
}

function unmarked(text: string): string {
  return text
    .split('\n')
    .filter((line) => !MARK.test(line))
    .join('\n')
    .trim();
}

function block(text: string): string[] {
  return ['```yaml', text, '```'];
}
