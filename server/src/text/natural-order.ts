/** The order in which a person looks for names, core/2 before core/10; the same whatever the machine's language. */

const numeric = new Intl.Collator('en', { numeric: true });

export function naturally(a: string, b: string): number {
  return numeric.compare(a, b) || (a < b ? -1 : a > b ? 1 : 0);
}

/** Compares by several texts: the first that differs decides. */
export function byTexts<T>(...texts: readonly ((element: T) => string)[]): (a: T, b: T) => number {
  return (a, b) => {
    for (const text of texts) {
      const order = naturally(text(a), text(b));
      if (order !== 0) return order;
    }
    return 0;
  };
}
