/** The files generated from the rules of checks and audits: the list of the rules, and a page for each. */

import { AUDIT_RULES, auditRules } from '../src/audit/rules.ts';
import type { Rules } from '../src/lint/check.ts';
import type { RuleInfo } from '../src/lint/rule.ts';
import type { Output } from './output.ts';
import { GROUPS, type Group, type RuleFile, ruleFiles } from './rule-files.ts';
import { auditRulePage, rulePage } from './rule-page.ts';

const CODE_BANNER = '// Made from the files of the folders beside it; `npm run generate` writes it anew.';
const PAGE_BANNER = '<!-- Made from the rule by `npm run generate`; edits belong there. -->';

export async function ruleOutputs(): Promise<Output[]> {
  const files = await ruleFiles();
  const all = files.map(({ rule }) => rule);
  const rules: Rules = {
    rules: all.filter((rule) => 'check' in rule),
    acceptanceRules: all.filter((rule) => 'checkUnused' in rule),
    ids: new Set([...all, ...auditRules].map(({ id }) => id)),
  };
  return [
    { path: 'server/src/rules/index.generated.ts', text: list(files) },
    { path: 'schemas/rules/README.md', text: index(files) },
    ...files.map((file) => page(file.id, rulePage(file, rules))),
    ...auditRules.map((rule) => page(rule.id, auditRulePage(rule))),
  ];
}

function page(id: string, text: string): Output {
  return { path: `schemas/rules/${id}.md`, text: `${PAGE_BANNER}\n\n${text}` };
}

function list(files: readonly RuleFile[]): string {
  const imports = files.map(({ group, id, constant }) => `import { ${constant} } from './${group}/${id}.ts';`);
  const names = (key: 'check' | 'checkUnused'): string[] =>
    files.filter(({ rule }) => key in rule).map(({ constant }) => `  ${constant},`);
  return [
    CODE_BANNER,
    '',
    ...imports,
    "import type { AcceptanceRule, Rule } from '../lint/rule.ts';",
    '',
    'export const rules: readonly Rule[] = [',
    ...names('check'),
    '];',
    '',
    'export const acceptanceRules: readonly AcceptanceRule[] = [',
    ...names('checkUnused'),
    '];',
    '',
  ].join('\n');
}

function index(files: readonly RuleFile[]): string {
  const parts = [
    PAGE_BANNER,
    '# Rules',
    'What Plumbline finds in a site. `lint: rules` sets how grave a rule is or turns it off; `lint: accept` ' +
      'lets single findings stay, with a reason.',
    ...(Object.keys(GROUPS) as Group[]).flatMap((group) => {
      const rules = files.filter((file) => file.group === group).map(({ rule }) => rule);
      return table(`## ${GROUPS[group]}`, rules);
    }),
    '# Audits',
    'What `plumbline audit` finds where what runs differs from the plan; set and accepted like rules.',
    ...Object.entries(AUDIT_RULES).flatMap(([audit, own]) => table(`## plumbline audit ${audit}`, Object.values(own))),
  ];
  return `${parts.join('\n\n')}\n`;
}

function table(title: string, auditRules: readonly RuleInfo[]): string[] {
  const rows = auditRules.map(({ id, severity, summary }) => `| [${id}](${id}.md) | ${severity} | ${cell(summary)} |`);
  return rows.length === 0
    ? []
    : [title, ['| rule | severity | what it finds |', '| --- | --- | --- |', ...rows].join('\n')];
}

function cell(text: string): string {
  return text.replaceAll('|', '\\|');
}
