/** What is made from the rules and from what audits find: the list of the rules, all ids, and a page for each. */

import { AUDIT_FAULTS, faults } from '../src/audit/faults.ts';
import type { Fault } from '../src/rules/rule.ts';
import type { Output } from './output.ts';
import { GROUPS, type Group, type RuleFile, ruleFiles } from './rule-files.ts';
import { faultPage, rulePage } from './rule-page.ts';

const CODE_BANNER = '// Made from the files of the folders beside it; `npm run generate` writes it anew.';
const PAGE_BANNER = '<!-- Made from the rule by `npm run generate`; edits belong there. -->';

export async function ruleOutputs(): Promise<Output[]> {
  const files = await ruleFiles();
  return [
    { path: 'server/src/rules/index.generated.ts', text: list(files) },
    { path: 'server/src/rules/ids.generated.ts', text: ids(files) },
    { path: 'schemas/rules/README.md', text: index(files) },
    ...files.map(({ id, rule, examples }) => page(id, rulePage(rule, examples))),
    ...faults.map((fault) => page(fault.id, faultPage(fault))),
  ];
}

function page(id: string, text: string): Output {
  return { path: `schemas/rules/${id}.md`, text: `${PAGE_BANNER}\n\n${text}` };
}

function list(files: readonly RuleFile[]): string {
  const imports = files.map(({ group, id, constant }) => `import { ${constant} } from './${group}/${id}.ts';`);
  const names = files.map(({ constant }) => `  ${constant},`);
  return [
    CODE_BANNER,
    '',
    ...imports,
    "import type { Rule } from './rule.ts';",
    '',
    'export const rules: readonly Rule[] = [',
    ...names,
    '];',
    '',
  ].join('\n');
}

/** Apart from the rules, so that a rule can look them up. */
function ids(files: readonly RuleFile[]): string {
  const list = (name: string, ids: readonly string[]): string[] => [
    `export const ${name}: readonly string[] = [`,
    ...ids.map((id) => `  '${id}',`),
    '];',
    '',
  ];
  return [
    CODE_BANNER,
    '',
    ...list(
      'ruleIds',
      files.map(({ id }) => id),
    ),
    '/** What audits find; it is set and accepted like a rule. */',
    ...list(
      'faultIds',
      faults.map(({ id }) => id),
    ),
  ].join('\n');
}

function index(files: readonly RuleFile[]): string {
  const parts = [
    PAGE_BANNER,
    '# Rules',
    'What Plumbline finds in a site. `lint: rules` sets how grave a rule is or turns it off; `lint: accept` lets single findings stay, with a reason.',
    ...(Object.keys(GROUPS) as Group[]).flatMap((group) => {
      const rules = files.filter((file) => file.group === group).map(({ rule }) => rule);
      return table(`## ${GROUPS[group]}`, rules);
    }),
    '# Audits',
    'What `plumbline audit` finds where what runs differs from the plan; set and accepted like rules.',
    ...Object.entries(AUDIT_FAULTS).flatMap(([audit, own]) => table(`## plumbline audit ${audit}`, Object.values(own))),
  ];
  return `${parts.join('\n\n')}\n`;
}

function table(title: string, faults: readonly Fault[]): string[] {
  const rows = faults.map(({ id, severity, summary }) => `| [${id}](${id}.md) | ${severity} | ${cell(summary)} |`);
  return rows.length === 0
    ? []
    : [title, ['| rule | severity | what it finds |', '| --- | --- | --- |', ...rows].join('\n')];
}

function cell(text: string): string {
  return text.replaceAll('|', '\\|');
}
