/** The thing that an acceptance names, where several have that name: the one that its rule has a finding about. */

import type { Checked } from '../../lint/check.ts';
import { type NamedSection, thingsOf } from '../../site/declared.ts';
import type { Named } from './named.ts';

const ORDER: readonly NamedSection[] = [
  'devices',
  'streams',
  'recordings',
  'traffic',
  'volumes',
  'vlans',
  'racks',
  'multiplexes',
  'services',
  'occasions',
];

export function acceptedNames(checked: Checked, rule: string, text: string): Named[] {
  const kinds = ORDER.filter((section) => thingsOf(checked.plan.site, section).has(text));
  const [first, second] = kinds;
  if (first === undefined) return [];
  if (second === undefined) return [{ kind: first, name: text }];
  const sections = new Set<string>();
  for (const [{ id }, { findings }] of checked.runs) {
    if (id === rule)
      for (const { acceptAt, at } of findings) if (acceptAt.includes(text)) sections.add(at.piece.section);
  }
  return [{ kind: kinds.find((kind) => sections.has(kind)) ?? first, name: text }];
}
