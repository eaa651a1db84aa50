/**
 * Keeps what pure functions computed, by the identity of what they computed it from.
 *
 * Values never change once they are made, so the same arguments mean the same result. Nothing else in the code carries
 * a result from one edit to the next.
 */

/**
 * A pure function of one object; each result is kept as long as its object is in use. For items and what is read from
 * them: V8 frees a result with its object only when it collects all of the heap, so what is new at every edit would
 * pile up. Results of that belong into the object itself, as a function by `lastResult`.
 */
export function perObject<K extends object, R>(compute: (key: K) => R): (key: K) => R {
  const results = new WeakMap<K, R>();
  return (key) => {
    const kept = results.get(key);
    if (kept !== undefined || results.has(key)) return kept as R;
    const result = compute(key);
    results.set(key, result);
    return result;
  };
}

/**
 * A pure function of arguments that a key stands for; each result is kept as long as the function is. Only inside
 * `perObject`, for few keys, where arguments of one key differ in nothing that `compute` reads.
 */
export function perKey<A extends readonly unknown[], R>(
  keyOf: (...args: A) => string,
  compute: (...args: A) => R,
): (...args: A) => R {
  const results = new Map<string, { readonly result: R }>();
  return (...args) => {
    const key = keyOf(...args);
    const kept = results.get(key) ?? { result: compute(...args) };
    results.set(key, kept);
    return kept.result;
  };
}

/** A pure function that gives its last result again as long as it gets the same arguments. */
export function lastResult<A extends readonly unknown[], R>(compute: (...args: A) => R): (...args: A) => R {
  let last: { readonly args: A; readonly result: R } | undefined;
  return (...args) => {
    if (last === undefined || !isSameList(last.args, args)) last = { args, result: compute(...args) };
    return last.result;
  };
}

/** Gives the last value again as long as it gets equal ones. */
export function lastEqual<T>(isEqual: (a: T, b: T) => boolean): (value: T) => T {
  let last: { readonly value: T } | undefined;
  return (value) => {
    if (last === undefined || !isEqual(last.value, value)) last = { value };
    return last.value;
  };
}

/** Gives the last list again as long as it gets lists of the same elements. */
export function lastList<T>(): (list: readonly T[]) => readonly T[] {
  return lastEqual<readonly T[]>(isSameList);
}

function isSameList(a: readonly unknown[], b: readonly unknown[]): boolean {
  if (a.length !== b.length) return false;
  for (let i = 0; i < a.length; i++) if (!Object.is(a[i], b[i])) return false;
  return true;
}
