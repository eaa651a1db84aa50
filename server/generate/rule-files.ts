/** The files of the rules, read from their folders: each exports a rule of its name, and its examples. */

import { readdir } from 'node:fs/promises';
import type { AcceptanceRule, Example, Rule } from '../src/lint/rule.ts';

/** The groups of rules in the order of the index. */
export const GROUPS = {
  text: 'Reading the files',
  names: 'Names',
  addresses: 'Addresses and VLANs',
  links: 'Cables and links',
  racks: 'Racks',
  power: 'Power over Ethernet',
  routes: 'Routes',
  streams: 'Streams',
  multicast: 'Multicast',
  television: 'Television',
  recording: 'Recording',
  make: 'What is made',
  policies: 'Policies',
  lint: 'The lint section',
} as const;

export type Group = keyof typeof GROUPS;

export interface RuleFile {
  readonly group: Group;
  readonly id: string;
  /** The name under which the rule is exported. */
  readonly constant: string;
  readonly rule: Rule | AcceptanceRule;
  readonly examples: readonly Example[];
}

const folder = new URL('../src/rules/', import.meta.url);

/** @throws Error where a file does not export a rule of its own name, and examples */
export async function ruleFiles(): Promise<RuleFile[]> {
  return (await Promise.all((Object.keys(GROUPS) as Group[]).map(filesOf))).flat();
}

async function filesOf(group: Group): Promise<RuleFile[]> {
  const own = new URL(`${group}/`, folder);
  const names = (await readdir(own)).filter((name) => name.endsWith('.ts')).sort();
  return Promise.all(
    names.map(async (name) => {
      const id = name.slice(0, -'.ts'.length);
      const constant = id.replace(/-([a-z0-9])/g, (_, letter: string) => letter.toUpperCase());
      const exported = (await import(`../src/rules/${group}/${id}.ts`)) as Readonly<Record<string, unknown>>;
      const rule = exported[constant] as Rule | AcceptanceRule | undefined;
      const examples = exported['examples'] as readonly Example[] | undefined;
      if (rule?.id !== id) throw new Error(`${group}/${name} does not export ${constant}, a rule with the id ${id}`);
      if (examples === undefined) throw new Error(`${group}/${name} does not export \`examples\``);
      return { group, id, constant, rule, examples };
    }),
  );
}
