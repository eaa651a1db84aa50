/**
 * A number that stands for a text: FNV-1a of 64 bits over its UTF-8. It finds changes; it keeps nobody from making two
 * texts alike on purpose.
 *
 * Source: RFC 9923 §2 and its test vectors, from memory.
 */

const OFFSET_BASIS = 0xcbf29ce484222325n;
const PRIME = 0x100000001b3n;

const utf8 = new TextEncoder();

export function fnv1a(text: string): bigint {
  let hash = OFFSET_BASIS;
  for (const byte of utf8.encode(text)) hash = BigInt.asUintN(64, (hash ^ BigInt(byte)) * PRIME);
  return hash;
}

/** Fewer bits of a hash, as the RFC folds them: what is cut off goes into what stays. At least half must stay. */
export function folded(hash: bigint, bits: number): bigint {
  return BigInt.asUintN(bits, hash ^ (hash >> BigInt(bits)));
}
