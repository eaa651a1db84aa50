/** What is made from the rules and from what audits find: the list of the rules, all ids, and a page for each. */

import { readdir } from 'node:fs/promises';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { AUDIT_FAULTS, faults } from '../src/audit/faults.ts';
import { faultPage, rulePage } from '../src/rules/page.ts';
import type { Fault, Rule } from '../src/rules/rule.ts';
import type { Output } from './output.ts';

/** In the order in which the index tells of them. */
const FOLDERS = {
  text: 'Reading the files',
  names: 'Names',
  addresses: 'Addresses and VLANs',
  links: 'Cables and links',
  power: 'Power over Ethernet',
  streams: 'Streams',
  multicast: 'Multicast',
  recording: 'Recording',
  policies: 'Policies',
  lint: 'The lint section',
} as const;

type Folder = keyof typeof FOLDERS;

interface RuleFile {
  readonly folder: Folder;
  readonly id: string;
  readonly constant: string;
  readonly rule: Rule;
}

const CODE_BANNER = '// Made from the files of the folders beside it; `npm run generate` writes it anew.';
const PAGE_BANNER = '<!-- Made from the rule by `npm run generate`; edits belong there. -->';

/** @throws Error where a file does not export a rule of its own name */
export async function ruleOutputs(root: string): Promise<Output[]> {
  const files = (await Promise.all((Object.keys(FOLDERS) as Folder[]).map((folder) => filesOf(root, folder)))).flat();
  return [
    { path: 'server/src/rules/index.generated.ts', text: list(files) },
    { path: 'server/src/rules/ids.generated.ts', text: ids(files) },
    { path: 'schemas/rules/README.md', text: index(files) },
    ...files.map(({ id, rule }) => page(id, rulePage(rule))),
    ...faults.map((fault) => page(fault.id, faultPage(fault))),
  ];
}

function page(id: string, text: string): Output {
  return { path: `schemas/rules/${id}.md`, text: `${PAGE_BANNER}\n\n${text}` };
}

async function filesOf(root: string, folder: Folder): Promise<RuleFile[]> {
  const path = join(root, 'server/src/rules', folder);
  const names = (await readdir(path)).filter((name) => name.endsWith('.ts')).sort();
  return Promise.all(
    names.map(async (name) => {
      const id = name.slice(0, -'.ts'.length);
      const constant = id.replace(/-([a-z0-9])/g, (_, letter: string) => letter.toUpperCase());
      const exported = (await import(pathToFileURL(join(path, name)).href)) as Readonly<Record<string, unknown>>;
      const rule = exported[constant] as Rule | undefined;
      if (rule?.id !== id) throw new Error(`${folder}/${name} does not export ${constant}, a rule with the id ${id}`);
      return { folder, id, constant, rule };
    }),
  );
}

function list(files: readonly RuleFile[]): string {
  const imports = files.map(({ folder, id, constant }) => `import { ${constant} } from './${folder}/${id}.ts';`);
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
    ...(Object.keys(FOLDERS) as Folder[]).flatMap((folder) => {
      const rules = files.filter((file) => file.folder === folder).map(({ rule }) => rule);
      return table(`## ${FOLDERS[folder]}`, rules);
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
