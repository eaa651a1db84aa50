/** What is told of the thing under the pointer: its figures, as a sum line by line. */

import type { Checked } from '../rules/check.ts';
import type { SiteText } from '../site/folder.ts';
import { type Place, headOf } from '../site/item.ts';
import { locate } from '../site/locate.ts';

export interface HoverText {
  readonly at: Place;
  readonly markdown: string;
}

export function hover(_checked: Checked, file: SiteText, offset: number): HoverText | undefined {
  const location = locate(file, offset);
  return location === undefined ? undefined : { at: headOf(location.item), markdown: location.item.name };
}
