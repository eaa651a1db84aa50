/** References of items to what sections declare. */

import { perObject } from '../memo.ts';
import type { NamedSection } from './declared.ts';
import type { Item } from './item.ts';
import type { NameMention } from './mentions.ts';
import { readEnd } from './read.ts';

/** The name of something that a section declares. */
export type SectionMention = NameMention & { readonly names: NamedSection | 'port-end' };

export interface Reference {
  readonly mention: SectionMention;
  readonly section: NamedSection;
  readonly name: string;
}

export const referencesOf = perObject(({ names }: Item): readonly Reference[] =>
  names.filter(isOfSection).map((mention) => ({
    mention,
    section: sectionDeclaring(mention.names),
    name: mention.names === 'port-end' ? (readEnd(mention.text, [])?.device ?? '') : mention.text,
  })),
);

/** Names of rules are checked by unknown-rule, names of ports by no-such-port. */
function isOfSection(mention: NameMention): mention is SectionMention {
  return mention.names !== 'rules' && mention.names !== 'own-port';
}

/** The section that declares what is named. */
export function sectionDeclaring(names: SectionMention['names']): NamedSection {
  return names === 'port-end' ? 'devices' : names;
}
