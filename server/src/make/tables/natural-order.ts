/** The order in which a person looks for names: core/2 before core/10. Alike on every machine, whatever its language. */

const numeric = new Intl.Collator('en', { numeric: true });

export function naturally(a: string, b: string): number {
  return numeric.compare(a, b) || (a < b ? -1 : a > b ? 1 : 0);
}

/** By several texts, the first that differs. */
export function byTexts<T>(...texts: readonly ((element: T) => string)[]): (a: T, b: T) => number {
  return (a, b) => {
    for (const text of texts) {
      const order = naturally(text(a), text(b));
      if (order !== 0) return order;
    }
    return 0;
  };
}
