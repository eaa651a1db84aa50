/** A record of entries, without a prototype, as any name may be a key. */
export function record<T>(entries: readonly (readonly [string, T])[]): Record<string, T> {
  const found = Object.create(null) as Record<string, T>;
  for (const [name, value] of entries) found[name] = value;
  return found;
}
