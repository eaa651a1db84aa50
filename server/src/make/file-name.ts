/** Names as file names: one that the site language does not allow could lead out of the folder. */

import { type Item, headOf, isName } from '../site/item.ts';
import { visible } from '../text/visible.ts';
import type { Refusal } from './output.ts';

/** File systems take names of up to 255 bytes; this leaves room for a prefix and a suffix. */
const LONGEST = 200;

/** Why no file can have the item's name; `undefined` where one can. */
export function refusedName(item: Item): Refusal | undefined {
  if (isName(item.name) && item.name.length <= LONGEST) return undefined;
  const why =
    item.name.length > LONGEST ? `is longer than ${LONGEST} characters` : 'is not of letters, digits, - and _ alone';
  return {
    at: headOf(item),
    message: `No file can be named after ${visible(item.name, 60)}: the name ${why}. Rename it.`,
  };
}
