/** Links from a file to pages: the rules that `lint` names. */

import { ruleById } from '../check.ts';
import { type Place, contentOf } from '../site/item.ts';
import type { SiteText } from '../site/folder.ts';
import { placeOfUse, usesIn } from './names/uses.ts';

export interface RuleLink {
  readonly at: Place;
  readonly rule: string;
}

export function ruleLinks(file: SiteText): RuleLink[] {
  const uses = file.read.flatMap((piece) => contentOf(piece).items).flatMap(usesIn);
  return uses.flatMap((use) => {
    const [named] = use.names;
    return named?.kind === 'rules' && ruleById.has(named.name) ? [{ at: placeOfUse(use), rule: named.name }] : [];
  });
}
