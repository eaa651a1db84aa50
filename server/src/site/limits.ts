/** What holds where the site's policies say nothing; ten-thousandths. Common practice, no source. */

export const LINK_WARN = 7000;
export const LINK_LIMIT = 9000;
export const VOLUME_LIMIT = 9000;
