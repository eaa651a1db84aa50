/** What the things of a site have in common. */

import type { Item } from '../item.ts';

/** What an item declares; the same object as long as the item's text stays. */
export interface Fact {
  readonly item: Item;
  readonly name: string;
}
