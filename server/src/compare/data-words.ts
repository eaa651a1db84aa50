/** What an item says, as words and as an identity that two plans share: a renamed thing has one identity in both. */

import type { Item } from '../site/item.ts';
import { type SectionMention, referencesOf } from '../site/references.ts';
import { type Data, type KeyPath, isMapping } from '../text/syntax.ts';
import type { PairedNames, Side } from './paired-names.ts';

export interface DataWords {
  readonly id: string;
  /** Null where nothing is said. */
  readonly words: string | null;
  /** Of a mapping, by the identity of the key; empty for others. */
  readonly parts: ReadonlyMap<string, { readonly key: string; readonly value: DataWords }>;
}

export const NOTHING_SAID: DataWords = { id: '', words: null, parts: new Map() };

/** @param data the item's own, or some of its keys */
export function dataWords(item: Item, side: Side, names: PairedNames, data: Data = item.data): DataWords {
  const mentions = new Map<string, SectionMention>(
    referencesOf(item).map(({ mention }) => [mentionKey(mention.part, mention.keyPath), mention]),
  );
  const idOf = (part: SectionMention['part'], keyPath: KeyPath, text: string): string => {
    const mention = mentions.get(mentionKey(part, keyPath));
    return mention === undefined ? text : names.mentioned(mention, side);
  };
  const wordsOf = (one: Data, keyPath: KeyPath): DataWords => {
    if (Array.isArray(one)) {
      const all = one.map((element: Data, index) => wordsOf(element, [...keyPath, index]));
      // Lists are in no order.
      const ids = all.map(({ id }) => id).sort();
      const words = all.length === 0 ? 'none' : all.map((element) => element.words ?? '').join(', ');
      return { ...NOTHING_SAID, id: `[${ids.join(', ')}]`, words };
    }
    if (isMapping(one)) {
      const all = Object.entries(one)
        .map(([key, value]) => {
          const inner = [...keyPath, key];
          return { id: idOf('key', inner, key), key, value: wordsOf(value, inner) };
        })
        .sort((a, b) => (a.id < b.id ? -1 : 1));
      return {
        id: `{${all.map(({ id, value }) => `${id}: ${value.id}`).join(', ')}}`,
        words: all.map(({ key, value }) => `${key}: ${value.words ?? ''}`).join(', '),
        parts: new Map(all.map(({ id, key, value }) => [id, { key, value }])),
      };
    }
    const text = String(one);
    return { ...NOTHING_SAID, id: idOf('value', keyPath, text), words: text };
  };
  return wordsOf(data, []);
}

function mentionKey(part: SectionMention['part'], keyPath: KeyPath): string {
  return JSON.stringify([part, ...keyPath]);
}
