/** Data of an item with the types of the schema; every key may be missing, as the text may be half typed. */

import { parseAddress } from '../standards/ipv4.ts';
import { NONE } from '../none.ts';
import { type Data, isMapping } from '../text/syntax.ts';

/** Every key may be missing, at any depth. */
export type Partly<T> = T extends readonly (infer E)[]
  ? readonly (Partly<E> | null)[]
  : T extends object
    ? { readonly [K in keyof T]?: Partly<T[K]> | undefined }
    : T;

export function asDeclared<T>(data: Data): Partly<T> {
  return (isMapping(data) ? data : {}) as Partly<T>;
}

/** The texts and numbers of a list, as text. */
export function strings(list: unknown): readonly string[] {
  return Array.isArray(list)
    ? list.filter((element) => typeof element === 'string' || typeof element === 'number').map(String)
    : NONE;
}

/** An IPv4 address; `undefined` where the text is not one. */
export function address(text: unknown): number | undefined {
  return typeof text === 'string' ? parseAddress(text) : undefined;
}
