/** The text for the thing under the pointer: what it is, and its figures as sums line by line. */

import { explanationsMarkdown } from '../../report/explain/explanation.ts';
import type { Checked } from '../../lint/check.ts';
import type { SiteText } from '../../site/folder.ts';
import { type Item, type Place, namePlace, placeOf } from '../../site/item.ts';
import { type Location, locate } from '../../site/locate.ts';
import { figuresAt } from './figures.ts';
import { keyHoverText, sectionText } from './key.ts';
import { mentionText } from './mention.ts';
import { ownName } from './own-name.ts';
import { sectionAt } from './section.ts';

export interface HoverText {
  readonly at: Place;
  readonly markdown: string;
}

export interface HoverOptions {
  /** Whether to show descriptions of the schema, or leave them to another extension that shows them too. */
  readonly schemaFeatures: boolean;
}

/** `offset` counts UTF-16 units from the start of the file. */
export function hover(
  checked: Checked,
  file: SiteText,
  offset: number,
  { schemaFeatures }: HoverOptions = { schemaFeatures: true },
): HoverText | undefined {
  const location = locate(file, offset);
  if (location === undefined) {
    const header = sectionAt(file, offset);
    const markdown = header === undefined || !schemaFeatures ? '' : sectionText(header.section);
    return header === undefined || markdown === '' ? undefined : { at: header.at, markdown };
  }
  const markdown = textsAt(checked, location, schemaFeatures)
    .filter((text) => text !== '')
    .join('\n\n');
  return markdown === '' ? undefined : { at: placeAt(location), markdown };
}

/** The named thing or the quantity at a place comes first, then the key. */
function textsAt({ plan }: Checked, { item, keyPath, part }: Location, schemaFeatures: boolean): string[] {
  const ofKey = keyHoverText(item, keyPath, part, schemaFeatures);
  if (keyPath.length === 0 && part === 'key') return [...ownName(plan, item), ...(hasFixedKeys(item) ? [ofKey] : [])];
  const mentions = item.mentions.filter((mention) => mention.part === part && sameRoute(mention.keyPath, keyPath));
  const named = mentions.flatMap((mention) => mentionText(plan, item, mention));
  const figures = explanationsMarkdown(figuresAt(plan, item, keyPath, part));
  return [...named, ...figures, ofKey];
}

function hasFixedKeys({ section }: Item): boolean {
  return section === 'site' || section === 'policies' || section === 'lint';
}

function sameRoute(a: readonly (string | number)[], b: readonly (string | number)[]): boolean {
  return a.length === b.length && a.every((step, index) => step === b[index]);
}

function placeAt({ item, keyPath, part }: Location): Place {
  if (keyPath.length === 0 && part === 'key') return namePlace(item);
  return placeOf(item, keyPath, part);
}
