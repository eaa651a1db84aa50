/** The placeholder for the reason of an acceptance. */
export const REASON = 'say why';
