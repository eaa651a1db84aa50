/** What holds where the site's policies say nothing; ten-thousandths. Common practice, no source. */

export const LINK_WARN = 7000;
export const LINK_LIMIT = 9000;
/** A cell of which a tenth more is taken loses packets: from 79 to 92 % on, simulated without neighbours. */
export const AIR_WARN = 5000;
export const AIR_LIMIT = 7000;
export const VOLUME_LIMIT = 9000;
/** Of what a volume sustains in writing. */
export const WRITE_WARN = 7000;
