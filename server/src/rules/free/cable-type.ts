/** Kinds of cable that would do. */

import { type CableType, reach } from '../../standards/cabling.ts';

/** By family, the least able first. */
const families: readonly (readonly CableType[])[] = [
  ['cat5', 'cat5e', 'cat6', 'cat6a', 'cat7', 'cat8'],
  ['om1', 'om2', 'om3', 'om4', 'om5'],
  ['os2'],
  ['dac'],
];

/** The least type of the same family, so for the same sockets, that carries the speed so far; bit/s, millimetres. */
export function leastCableType(like: CableType, bitsPerSecond: number, millimetres = 0): CableType | undefined {
  const family = families.find((types) => types.includes(like)) ?? [];
  return family.find((type) => (reach(type, bitsPerSecond)?.metres ?? -1) * 1000 >= millimetres);
}
