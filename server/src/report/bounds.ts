/** The bounds above which a share of a whole is tight, or too much. */

/** Shares of a whole: above `warn` it is tight, above `limit` too much. */
export interface Bounds {
  readonly warn: number;
  readonly limit: number;
}

/** The bounds of a policy, which is in ten-thousandths. */
export function boundsOf({ warn, limit }: { readonly warn: number | undefined; readonly limit: number }): Bounds {
  return { warn: (warn ?? limit) / 10_000, limit: limit / 10_000 };
}

/** The bounds of something that may be used up. */
export const WHOLE: Bounds = { warn: 1, limit: 1 };
