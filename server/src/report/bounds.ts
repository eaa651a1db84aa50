/** From where on a share of a whole is tight, and from where on too much. */

/** Shares of a whole: above `warn` it is tight, above `limit` too much. */
export interface Bounds {
  readonly warn: number;
  readonly limit: number;
}

/** Of ten-thousandths, as policies are. */
export function boundsOf({ warn, limit }: { readonly warn: number | undefined; readonly limit: number }): Bounds {
  return { warn: (warn ?? limit) / 10_000, limit: limit / 10_000 };
}

/** What may be used whole. */
export const WHOLE: Bounds = { warn: 1, limit: 1 };
