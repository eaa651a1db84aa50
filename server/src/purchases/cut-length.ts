/** Lengths that are bought. Common practice; no source. Millimetres. */

/** Leads with both plugs are sold so long. */
const STOCK = [250, 500, 1000, 1500, 2000, 3000, 5000];
/** Of a permanent cable: a tenth more, at least 2 m, in whole metres. */
const SLACK = 1.1;
const LEAST_SLACK = 2000;
const METRE = 1000;

/** The lead that is long enough; `undefined` where none is. */
export function stockLength(length: number): number | undefined {
  return STOCK.find((stock) => stock >= length);
}

/** Of a cable that is laid and cut on site, with slack for its way and its ends. */
export function cutLength(length: number): number {
  // A tenth more is counted in whole millimetres, so that 100 m are 110 m and no more.
  return Math.ceil(Math.max(Math.round(length * SLACK), length + LEAST_SLACK) / METRE) * METRE;
}
