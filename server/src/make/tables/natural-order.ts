/** The order in which a person looks for names: core/2 before core/10. Alike on every machine, whatever its language. */

export function naturally(a: string, b: string): number {
  const [as, bs] = [pieces(a), pieces(b)];
  for (let i = 0; i < Math.min(as.length, bs.length); i++) {
    const order = compared(as[i] ?? '', bs[i] ?? '');
    if (order !== 0) return order;
  }
  return as.length - bs.length || (a < b ? -1 : a > b ? 1 : 0);
}

/** Digits and what stands between them. */
function pieces(text: string): string[] {
  return text.match(/\d+|\D+/g) ?? [];
}

function compared(a: string, b: string): number {
  const [digitsOfA, digitsOfB] = [a, b].map((piece) =>
    /^\d/.test(piece) ? piece.replace(/^0+(?=\d)/, '') : undefined,
  );
  if (digitsOfA !== undefined && digitsOfB !== undefined) {
    return digitsOfA.length - digitsOfB.length || (digitsOfA < digitsOfB ? -1 : digitsOfA > digitsOfB ? 1 : 0);
  }
  const [lowA, lowB] = [a.toLowerCase(), b.toLowerCase()];
  return lowA < lowB ? -1 : lowA > lowB ? 1 : 0;
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
