/** Names of devices as names of files: what is no name in the site language could lead out of the folder. */

import { type Item, headOf, isName } from '../site/item.ts';
import { visible } from '../text/visible.ts';
import type { Refusal } from './output.ts';

/** File systems take no longer names than 255 bytes; that leaves room for what is put behind. */
const LONGEST = 200;

/** Why no file can bear the name; `undefined` where one can. */
export function refusedName(item: Item): Refusal | undefined {
  if (isName(item.name) && item.name.length <= LONGEST) return undefined;
  const why =
    item.name.length > LONGEST ? `is longer than ${LONGEST} characters` : 'is not of letters, digits, - and _ alone';
  return {
    at: headOf(item),
    message: `No file can be named after ${visible(item.name, 60)}: the name ${why}. Rename it.`,
  };
}
