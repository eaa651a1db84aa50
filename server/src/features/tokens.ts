/** The names that a file refers to, each with the kind of thing that it names. */

import type { Checked } from '../lint/check.ts';
import { type Place, contentOf } from '../site/item.ts';
import { type SiteText, spanOf } from '../site/folder.ts';
import { thingsOf } from '../site/declared.ts';
import type { NamedKind } from './names/named.ts';
import { namesOf, placeOfUse, usesIn } from './names/uses.ts';

export interface NameToken {
  readonly kind: NamedKind;
  readonly at: Place;
}

/** In the order of the file, without names that lead nowhere and names over several lines. */
export function nameTokens(checked: Checked, file: SiteText): NameToken[] {
  const found: NameToken[] = [];
  const seen = new Set<number>();
  for (const piece of file.read) {
    for (const item of contentOf(piece).items) {
      for (const use of usesIn(item)) {
        if (use.isDeclaration) continue;
        const named = namesOf(checked, use)[0];
        if (named === undefined || !exists(checked, named.kind, named.name)) continue;
        const at = placeOfUse(use);
        const { start } = spanOf(file, at);
        if (seen.has(start) || at.piece.text.slice(at.start, at.end).includes('\n')) continue;
        seen.add(start);
        found.push({ kind: named.kind, at });
      }
    }
  }
  return found.sort((a, b) => spanOf(file, a.at).start - spanOf(file, b.at).start);
}

function exists({ plan: { site } }: Checked, kind: NamedKind, name: string): boolean {
  if (kind === 'rules') return true;
  if (kind !== 'ports') return thingsOf(site, kind).has(name);
  const slash = name.indexOf('/');
  return site.deviceByName.get(name.slice(0, slash))?.portByName.has(name.slice(slash + 1)) === true;
}
