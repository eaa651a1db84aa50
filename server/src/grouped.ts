/** Elements by a key, each list in the order of the elements; those without a key are left out. */
export function grouped<T, K>(elements: Iterable<T>, keyOf: (element: T) => K | undefined): Map<K, T[]> {
  const found = new Map<K, T[]>();
  for (const element of elements) {
    const key = keyOf(element);
    if (key === undefined) continue;
    const list = found.get(key);
    if (list === undefined) found.set(key, [element]);
    else list.push(element);
  }
  return found;
}

/** The first of all elements but one: where many are alike, no more are looked at for each of them. */
export function firstOthers<T>(all: readonly T[], one: T, most: number): T[] {
  return all
    .slice(0, most + 1)
    .filter((other) => other !== one)
    .slice(0, most);
}
