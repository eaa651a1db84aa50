export interface Spread {
  readonly median: number;
  readonly p95: number;
}

/** Of samples in any unit and order. */
export function spread(samples: readonly number[]): Spread {
  const sorted = [...samples].sort((a, b) => a - b);
  const at = (part: number): number => sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * part))] ?? NaN;
  return { median: at(0.5), p95: at(0.95) };
}
