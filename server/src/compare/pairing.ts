/** Pairs what is the same thing in two lists: by name, and what is left by what it keeps under another name. */

export interface MatchedPairs<T> {
  readonly before: T | undefined;
  readonly after: T | undefined;
}

/** Matches things by name. */
export function matchedByName<T extends { readonly name: string }>(
  before: readonly T[],
  after: readonly T[],
): MatchedPairs<T>[] {
  const old = new Map(before.map((one) => [one.name, one]));
  const current = new Set(after.map(({ name }) => name));
  return [
    ...after.map((one) => ({ before: old.get(one.name), after: one })),
    ...before.filter(({ name }) => !current.has(name)).map((one) => ({ before: one, after: undefined })),
  ];
}

/** Matches things by name, and those left by the signs that they keep under another name. */
export function matchedBySigns<T extends { readonly name: string }>(
  before: readonly T[],
  after: readonly T[],
  signsOld: (one: T) => readonly string[],
  signsNew: (one: T) => readonly string[],
): MatchedPairs<T>[] {
  const matched = matchedByName(before, after);
  const gone = matched.flatMap((pair) => (pair.after === undefined && pair.before !== undefined ? [pair.before] : []));
  const added = matched.flatMap((pair) => (pair.before === undefined && pair.after !== undefined ? [pair.after] : []));
  const renamed = paired(gone, added, signsOld, signsNew);
  const old = new Set(renamed.values());
  return matched.flatMap((pair): MatchedPairs<T>[] => {
    if (pair.after === undefined) return pair.before !== undefined && old.has(pair.before) ? [] : [pair];
    return [{ before: pair.before ?? renamed.get(pair.after), after: pair.after }];
  });
}

/** Pairs things by a sign that no others share, the strongest signs first. @returns the old by the new */
export function paired<T>(
  gone: readonly T[],
  added: readonly T[],
  signsOld: (one: T) => readonly string[],
  signsNew: (one: T) => readonly string[],
): Map<T, T> {
  const old = bySign(gone, signsOld);
  const current = bySign(added, signsNew);
  const found = new Map<T, T>();
  const taken = new Set<T>();
  for (const sign of [...current.keys()].filter((one) => old.has(one)).sort()) {
    const [from, ...othersOld] = old.get(sign) ?? [];
    const [to, ...othersNew] = current.get(sign) ?? [];
    if (from === undefined || to === undefined || othersOld.length + othersNew.length > 0) continue;
    if (found.has(to) || taken.has(from)) continue;
    found.set(to, from);
    taken.add(from);
  }
  return found;
}

function bySign<T>(all: readonly T[], signs: (one: T) => readonly string[]): Map<string, T[]> {
  const found = new Map<string, T[]>();
  for (const one of all)
    for (const sign of new Set(signs(one))) {
      const list = found.get(sign);
      if (list === undefined) found.set(sign, [one]);
      else list.push(one);
    }
  return found;
}
