/** Names as file names: a name that the site language does not allow could lead out of the folder. */

import { type Item, namePlace, isName } from '../site/item.ts';
import { visible } from '../text/visible.ts';
import type { Refusal } from './output.ts';

/** Why no file can have the item's name; `undefined` where one can. */
export function refusedName(item: Item): Refusal | undefined {
  if (isName(item.name)) return undefined;
  return {
    at: namePlace(item),
    rule: 'malformed-value',
    message: `No file can be named after ${visible(item.name, 60)}: it is not of 1 to 63 letters, digits, - and _. Rename it.`,
  };
}
