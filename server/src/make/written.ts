/** What an item says that is without effect on what is computed, and so is not in the site's model. */

import type { Item } from '../site/item.ts';
import type { Data, Route } from '../text/syntax.ts';

/** The text that a route leads to; `undefined` where there is none. */
export function written(item: Item, route: Route): string | undefined {
  let data: Data | undefined = item.data;
  for (const step of route) {
    if (typeof data !== 'object' || data === null) return undefined;
    data = Object.hasOwn(data, step) ? (data as { readonly [key: string]: Data })[step] : undefined;
  }
  return typeof data === 'string' && data.trim() !== '' ? data : undefined;
}
