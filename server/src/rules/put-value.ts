/** Sets a key of an item, whether it stands there or not. */

import { type Edit, addEntry, nodeAt, setValue } from '../site/edit.ts';
import type { Item } from '../site/item.ts';

export function putValue(item: Item, key: string, text: string): Edit[] {
  const edit = nodeAt(item, [key]) === undefined ? addEntry(item, [], key, text) : setValue(item, [key], text);
  return edit === undefined ? [] : [edit];
}
