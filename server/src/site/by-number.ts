/**
 * Numbered names first: of an object's keys, those that are one number come first and ranges where they are written.
 */
export function byNumber({ name: a }: { readonly name: string }, { name: b }: { readonly name: string }): number {
  const [first, second] = [a, b].map((name) => (/^\d+$/.test(name) ? Number(name) : Infinity));
  return first === second || first === undefined || second === undefined ? 0 : first - second;
}
