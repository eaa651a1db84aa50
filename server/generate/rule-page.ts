/** The page of a rule or of an audit's finding, as Markdown. */

import { type Rules, checkBy } from '../src/lint/check.ts';
import type { Example, RuleInfo } from '../src/lint/rule.ts';
import { SiteFolder } from '../src/site/folder.ts';
import type { RuleFile } from './rule-files.ts';

/** A line that marks a range in an example, for its test. */
const MARK = /^\s*#\s*(\^+|want\s+\d+-\d+)\s.*$/;

export function rulePage({ rule, examples }: RuleFile, rules: Rules): string {
  const messages = (text: string): string[] => messagesOf(rule, text, rules);
  return page([...infoParts(rule), ...examples.flatMap((example) => exampleParts(example, messages))]);
}

export function auditRulePage(rule: RuleInfo): string {
  return page(infoParts(rule));
}

function page(parts: readonly string[]): string {
  return `${parts.join('\n').trimEnd()}\n`;
}

function infoParts({ id, summary, severity, why, source }: RuleInfo): string[] {
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

function exampleParts({ bad, good, fixed }: Example, messagesIn: (text: string) => string[]): string[] {
  const text = unmarked(bad);
  const messages = messagesIn(text).map((message) => `- ${message}`);
  const right =
    good !== undefined
      ? ['Right:', '', ...block(unmarked(good)), '']
      : fixed !== undefined
        ? ['After its fix:', '', ...block(unmarked(fixed)), '']
        : [];
  return ['Wrong:', '', ...block(text), '', ...messages, '', ...right];
}

function messagesOf({ id }: RuleInfo, text: string, rules: Rules): string[] {
  const folder = new SiteFolder();
  folder.set('example.site.yaml', text);
  return checkBy(rules, folder)
    .diagnostics.filter(({ rule }) => rule.id === id)
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
