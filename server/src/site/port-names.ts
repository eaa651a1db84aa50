/** The names of ports that the keys of a device's `ports` declare. */

import { asDeclared } from './declared-data.ts';
import type { Item } from './item.ts';
import type * as Written from './schema.generated/types.ts';

/** The most ports of one range; more are a typing error. */
export const RANGE_PORTS = 1024;

/** The names that a key of `ports` declares: each number of a range, or the key itself. */
export function portNames(key: string): string[] {
  const range = portRange(key);
  return range === undefined ? [key] : Array.from({ length: range.count }, (_, i) => String(range.first + i));
}

function portRange(key: string): { readonly first: number; readonly count: number } | undefined {
  const range = /^(\d{1,6})-(\d{1,6})$/.exec(key);
  if (range === null) return undefined;
  const first = Number(range[1]);
  const count = Number(range[2]) - first + 1;
  return { first, count: count < 1 || count > RANGE_PORTS ? 0 : count };
}

/** How many ports a device declares, counted without creating them. */
export function portCount({ data }: Item): number {
  const { ports } = asDeclared<Written.Device>(data);
  return Object.keys(ports ?? {}).reduce((sum, key) => sum + (portRange(key)?.count ?? 1), 0);
}
