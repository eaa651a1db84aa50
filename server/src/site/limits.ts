/** Thresholds where the site declares no policy; ten-thousandths. Common practice, no source. */

export const LINK_WARN = 7000;
export const LINK_LIMIT = 9000;
/** A radio cell that is a tenth fuller loses packets: simulated without neighbours, from between 79 and 92 % on. */
export const AIR_WARN = 5000;
export const AIR_LIMIT = 7000;
export const VOLUME_LIMIT = 9000;
/** The share of the rate that a volume sustains in writing. */
export const WRITE_WARN = 7000;
