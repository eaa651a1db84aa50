/** Freezes a value and everything in it, so that a later change throws. */

const frozen = new WeakSet<object>();

export function deepFreeze(value: unknown): void {
  const pending: unknown[] = [value];
  for (let next = pending.pop(); pending.length > 0 || next !== undefined; next = pending.pop()) {
    if (typeof next !== 'object' || next === null || frozen.has(next)) continue;
    frozen.add(next);
    if (next instanceof Map) pending.push(...next.keys(), ...next.values());
    else if (next instanceof Set) pending.push(...next);
    // Object.freeze leaves what a map or set holds changeable.
    if (next instanceof Map || next instanceof Set) {
      for (const method of ['set', 'add', 'delete', 'clear'])
        if (method in next) Object.defineProperty(next, method, { value: refuse });
    }
    pending.push(...Object.values(next));
    Object.freeze(next);
  }
}

function refuse(): never {
  throw new TypeError('this map or set is a value, which never changes');
}
