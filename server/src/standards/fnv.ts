/**
 * FNV-1a, 64 bits, over the UTF-8 of a text. It detects changes, and is no protection against a deliberate collision.
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

/** A hash reduced to fewer bits by XOR folding, as in the RFC; at least half of its bits must remain. */
export function folded(hash: bigint, bits: number): bigint {
  return BigInt.asUintN(bits, hash ^ (hash >> BigInt(bits)));
}
