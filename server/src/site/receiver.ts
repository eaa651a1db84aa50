/** Where a stream names a receiver. */

import { perObject } from '../memo.ts';
import type { KeyPath } from '../text/syntax.ts';
import type { Item } from './item.ts';
import type { Stream } from './model.ts';

export function receiverKeyPath({ item }: Stream, receiver: string): KeyPath {
  return receiversOf(item).get(receiver) ?? ['receivers'];
}

/** The first place of each name. */
const receiversOf = perObject(({ mentions }: Item): ReadonlyMap<string, KeyPath> => {
  const found = new Map<string, KeyPath>();
  for (const { keyPath, text } of mentions)
    if (keyPath[0] === 'receivers' && !found.has(text)) found.set(text, keyPath);
  return found;
});
