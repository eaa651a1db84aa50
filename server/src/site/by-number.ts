/**
 * Orders the keys of an object: single numbers first, ascending; ranges such as `1-8` stay in the order written.
 */
export function byNumber({ name: a }: { readonly name: string }, { name: b }: { readonly name: string }): number {
  const [first, second] = [a, b].map((name) => (/^\d+$/.test(name) ? Number(name) : Infinity));
  return first === second || first === undefined || second === undefined ? 0 : first - second;
}
