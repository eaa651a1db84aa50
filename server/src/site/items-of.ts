/** Items made of data instead of a file, for a site as it would be. */

import { SiteFolder } from './folder.ts';
import type { Item } from './item.ts';
import type { SectionName } from './shape.ts';
import type { Data } from '../text/syntax.ts';

/** An entry of a section, or with an empty name an element of a list, as data. */
export interface Entry {
  readonly section: SectionName;
  readonly name: string;
  readonly data: Data;
}

/** The entries as items, read as those of a file are; `of` is the name of that file. */
export function itemsOf(of: string, entries: readonly Entry[]): readonly Item[] {
  const sections = new Map<SectionName, string[]>();
  for (const { section, name, data } of entries) {
    const lines = sections.get(section) ?? [];
    sections.set(section, lines);
    // JSON is YAML in flow style (YAML 1.2.2 §1.3).
    lines.push(name === '' ? `  - ${JSON.stringify(data)}` : `  ${name}: ${JSON.stringify(data)}`);
  }
  const text = [...sections].map(([section, lines]) => `${section}:\n${lines.join('\n')}\n`).join('');
  const folder = new SiteFolder();
  folder.set(`what-if:/${of}.site.yaml`, text);
  return folder.items;
}
