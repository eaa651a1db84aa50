/** Stands where the reason of an acceptance is still to be typed. */
export const REASON = 'say why';
