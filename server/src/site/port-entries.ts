/** The entries of a device's `ports` as they stand in the text: numbers and ranges of numbers. */

import type { SiteText } from './folder.ts';
import { type Item, contentOf } from './item.ts';
import { locate } from './locate.ts';
import { portNames } from './port-names.ts';
import { type Entry, type Mapping, follow, keyText } from '../text/syntax.ts';

export interface PortEntry {
  readonly entry: Entry;
  /** The numbers of its ports; `undefined` where the key is neither a number nor a range. */
  readonly numbers: { readonly first: number; readonly last: number } | undefined;
  /** Offsets in the piece: from the key to behind the value; in block style, whole lines. */
  readonly start: number;
  readonly end: number;
}

export interface PortEntries {
  readonly item: Item;
  readonly mapping: Mapping;
  readonly entries: readonly PortEntry[];
  /** The wanted entry. */
  readonly at: PortEntry;
}

/** `undefined` where the cursor is in no port, or the ports have a fault that forbids rewriting them. */
export function portEntriesAt(file: SiteText, offset: number): PortEntries | undefined {
  const location = locate(file, offset);
  if (location === undefined) return undefined;
  const { item, keyPath } = location;
  const key = keyPath[1];
  if (item.section !== 'devices' || keyPath[0] !== 'ports' || key === undefined) return undefined;
  return portEntriesOf(item, String(key));
}

/** The entries of a device, with the one of a key. */
export function portEntriesOf(item: Item, key: string): PortEntries | undefined {
  if (contentOf(item.piece).tree.problems.length > 0) return undefined;
  const mapping = follow(item.node, ['ports'])?.node;
  if (mapping?.kind !== 'mapping') return undefined;
  const written = mapping.entries.filter(({ merged }) => !merged);
  const names = mapping.entries.flatMap(({ key }) => portNames(keyText(key)));
  if (new Set(names).size < names.length) return undefined;
  const entries = written.map((entry) => portEntry(item.piece.text, mapping, entry));
  const at = entries.find(({ entry }) => keyText(entry.key) === key);
  return at === undefined || entries.some(({ start }) => start === -1) ? undefined : { item, mapping, entries, at };
}

function portEntry(text: string, { flow }: Mapping, entry: Entry): PortEntry {
  const { key } = entry;
  const colon = text.indexOf(':', key.end);
  const end = Math.max(entry.end, colon === -1 ? key.end : colon + 1);
  if (flow) return { entry, numbers: numbersOf(keyText(key)), start: key.start, end };
  const lineStart = text.lastIndexOf('\n', key.start - 1) + 1;
  const newline = text.indexOf('\n', end);
  return {
    entry,
    numbers: numbersOf(keyText(key)),
    start: /^ *$/.test(text.slice(lineStart, key.start)) ? lineStart : -1,
    end: newline === -1 ? text.length : newline + 1,
  };
}

function numbersOf(key: string): PortEntry['numbers'] {
  if (!/^\d+(?:-\d+)?$/.test(key)) return undefined;
  const names = portNames(key);
  const [first, last] = [names[0], names[names.length - 1]];
  // `01` names a port 01, which no range has.
  if (first === undefined || last === undefined || String(Number(first)) !== first) return undefined;
  return { first: Number(first), last: Number(last) };
}

/** The text of the key with other words, in the quotes that it has. */
export function keyAs({ key }: Entry, text: string, words: string): string {
  const quote = /^["']/.exec(text.slice(key.start, key.end))?.[0] ?? '';
  return quote + words + quote;
}
