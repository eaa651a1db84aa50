/** Lengths that are bought. Common practice; no source. Millimetres. */

/** The lengths in which leads with both plugs are sold. */
const STOCK = [250, 500, 1000, 1500, 2000, 3000, 5000];
/** The slack of a permanent cable: a tenth, at least 2 m, rounded up to whole metres. */
const SLACK = 1.1;
const LEAST_SLACK = 2000;
const METRE = 1000;

/** The shortest lead that is long enough; `undefined` where none is. */
export function stockLength(length: number): number | undefined {
  return STOCK.find((stock) => stock >= length);
}

/** The length to buy of a cable that is laid and cut on site, with slack for its way and its ends. */
export function cutLength(length: number): number {
  // The tenth is rounded to millimetres, so that 100 m becomes 110 m and not 111 m.
  return Math.ceil(Math.max(Math.round(length * SLACK), length + LEAST_SLACK) / METRE) * METRE;
}
