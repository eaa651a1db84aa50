/** The median of the values at `from` up to, not including, `to`; `undefined` where there is none. */
export function median(from: number, to: number, value: (index: number) => number): number | undefined {
  if (to <= from) return undefined;
  const values = new Float64Array(to - from).map((_, index) => value(from + index)).sort();
  return values[Math.floor(values.length / 2)];
}
