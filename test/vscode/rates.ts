// Bit rates as a person reads them in a text.

const unit: Readonly<Record<string, number>> = { b: 1, kb: 1e3, Mb: 1e6, Gb: 1e9 };

/**
 * Whether a text shows a rate, rounded to as many digits as it writes.
 *
 * @param rate in bit/s
 */
export function showsRate(text: string, rate: number): boolean {
  return [...text.matchAll(/(\d+(?:\.(\d+))?)\s(b|kb|Mb|Gb)\/s/g)].some(([, number, decimals = '', name = 'b']) => {
    const scale = unit[name] ?? 1;
    return Math.abs(Number(number) * scale - rate) <= scale / 10 ** decimals.length / 2;
  });
}
