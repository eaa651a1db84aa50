/** Where a site declares the media of a stream: at the stream itself, or at one that it carries. */

import { nodeAt } from '../../site/edit.ts';
import type { Item } from '../../site/item.ts';
import type { Site, Stream } from '../../site/model.ts';
import { isQuantity, readQuantity } from '../../text/quantity.ts';
import type { KeyPath } from '../../text/syntax.ts';

export interface Declared {
  readonly by: Stream;
  readonly keyPath: KeyPath;
  /** As it is written. */
  readonly text: string;
  /** A plain number, or a quantity in bit/s, milliseconds or hertz; `undefined` for anything else. */
  readonly value: number | undefined;
}

const QUANTITIES = {
  'bitrate': 'bit-rate',
  'peak-bitrate': 'bit-rate',
  'keyframe-interval': 'duration',
  'sample-rate': 'frequency',
} as const;

/** The declaration of the key, or without a key of the kind, at the nearest stream along `carries` that has one. */
export function declaredOf(site: Site, stream: Stream, kind: 'video' | 'audio', key?: string): Declared | undefined {
  const keyPath = key === undefined ? [kind] : [kind, key];
  const seen = new Set<Stream>();
  for (let by: Stream | undefined = stream; by !== undefined && !seen.has(by);) {
    seen.add(by);
    const node = nodeAt(by.item, keyPath);
    if (node !== undefined && key === undefined) return { by, keyPath, text: '', value: undefined };
    if (node?.kind === 'scalar') {
      const text = String(node.value);
      const value = valueOf(key ?? '', text);
      return Number.isNaN(value) ? undefined : { by, keyPath, text, value };
    }
    by = by.carries === undefined ? undefined : site.streamByName.get(by.carries);
  }
  return undefined;
}

/** NaN where a number is expected and the text is none, which a rule reports. */
function valueOf(key: string, text: string): number | undefined {
  if (key === 'codec' || key === 'size') return undefined;
  const kind = Object.hasOwn(QUANTITIES, key) ? QUANTITIES[key as keyof typeof QUANTITIES] : undefined;
  if (kind === undefined) return text.trim() === '' ? NaN : Number(text);
  const read = readQuantity(text, kind);
  return isQuantity(read) ? read.value : NaN;
}

/** Whether a mapping is written in braces, where a comma ends a value. */
export function isInBraces(item: Item, keyPath: KeyPath): boolean {
  const node = nodeAt(item, keyPath);
  return node?.kind === 'mapping' && node.flow;
}
