/** Syntax of a site file: small immutable nodes, offsets counted from the start of their piece. */

import { perObject } from '../memo.ts';

/** A half-open range of UTF-16 offsets. */
export interface Span {
  readonly start: number;
  readonly end: number;
}

export interface Scalar extends Span {
  readonly kind: 'scalar';
  readonly value: string | number | boolean | null;
  /** The characters of the value as written, without quotes. */
  readonly source: string;
  readonly style: 'plain' | 'quoted' | 'block';
}

export interface Entry extends Span {
  readonly key: Scalar;
  readonly value: Node;
  /** Taken over from another mapping by a merge key (`<<`). */
  readonly merged: boolean;
}

export interface Mapping extends Span {
  readonly kind: 'mapping';
  readonly entries: readonly Entry[];
  readonly flow: boolean;
}

export interface Sequence extends Span {
  readonly kind: 'sequence';
  readonly items: readonly Node[];
  readonly flow: boolean;
}

export type Node = Scalar | Mapping | Sequence;

/** Keys and indices that lead from a node to a node inside it. */
export type KeyPath = readonly (string | number)[];

/** The text of a key as it names an entry: `16` and `"16"` name the same port. */
export function keyText(key: Scalar): string {
  return key.style === 'plain' ? key.source : String(key.value);
}

/** Mappings of more entries than this are looked up by an index. */
const FEW = 24;

/** The last entry with that key, as YAML readers that allow duplicates take it. */
export function entryOf(node: Node | undefined, key: string): Entry | undefined {
  if (node?.kind !== 'mapping') return undefined;
  if (node.entries.length > FEW) return indexOf(node).get(key);
  for (let i = node.entries.length - 1; i >= 0; i--) {
    const entry = node.entries[i];
    if (entry !== undefined && keyText(entry.key) === key) return entry;
  }
  return undefined;
}

const indexOf = perObject(
  ({ entries }: Mapping): ReadonlyMap<string, Entry> => new Map(entries.map((entry) => [keyText(entry.key), entry])),
);

/** What a key path leads to; `undefined` where the text has nothing there. */
export function follow(node: Node | undefined, keyPath: KeyPath): { entry: Entry | undefined; node: Node } | undefined {
  let entry: Entry | undefined;
  for (const step of keyPath) {
    if (node?.kind === 'sequence' && typeof step === 'number') {
      node = node.items[step];
      entry = undefined;
    } else {
      entry = entryOf(node, String(step));
      node = entry?.value;
    }
    if (node === undefined) return undefined;
  }
  return node === undefined ? undefined : { entry, node };
}

export type Data = string | number | boolean | null | Data[] | { [key: string]: Data };

/** Whether a value of YAML or JSON is a mapping (an object): neither a list nor null. */
export function isMapping(value: unknown): value is { readonly [key: string]: unknown } {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

/** What a key path leads to; `undefined` where the data has nothing there. */
export function dataAt(data: Data | undefined, keyPath: KeyPath): Data | undefined {
  let found = data;
  for (const step of keyPath) {
    if (Array.isArray(found)) found = found[Number(step)];
    else if (isMapping(found) && Object.hasOwn(found, step)) found = found[step];
    else return undefined;
  }
  return found;
}

/** The text that a key path leads to; `undefined` where there is none, or nothing but space. */
export function textAt(data: Data, keyPath: KeyPath): string | undefined {
  const found = dataAt(data, keyPath);
  return typeof found === 'string' && found.trim() !== '' ? found : undefined;
}

/**
 * A mapping without entries. It inherits nothing, so any name may be a key. Those with the same keys share a shape in
 * memory, which objects of `Object.create(null)` do not: they take three times the memory and are slow to read.
 */
export const emptyMapping: () => { [key: string]: Data } = (() => {
  const Bare = function () {} as unknown as new () => { [key: string]: Data };
  Bare.prototype = Object.create(null);
  return () => new Bare();
})();

/** Plain data of a node, for schema validation. */
export function dataOf(node: Node): Data {
  switch (node.kind) {
    case 'scalar':
      return node.value;
    case 'sequence':
      return node.items.map(dataOf);
    case 'mapping': {
      const data = emptyMapping();
      for (const entry of node.entries) data[keyText(entry.key)] = dataOf(entry.value);
      return data;
    }
  }
}
