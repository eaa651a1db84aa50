/**
 * Spanning tree: what a link costs on the way to the root.
 *
 * Source: IEEE 802.1D-2004 Table 17-3 and 17.14. The standard was not read; the recommended costs at 1 Mb/s,
 * 10 Mb/s … 10 Tb/s agree with Open vSwitch's lib/rstp.c, which cites the table (secondary). The formula between and
 * the limits 1 and 200 000 000 are from memory.
 */

/** The default bridge priority; the lowest one becomes root (802.1D-2004 Table 17-2; from memory). */
export const DEFAULT_PRIORITY = 32_768;

const LOWEST_COST = 1;
const HIGHEST_COST = 200_000_000;

/** The recommended path cost of a port: 20 Tb/s over its speed, so 20 000 at 1 Gb/s; 1 to 200 000 000. */
export function pathCost(bitsPerSecond: number): number {
  return Math.min(HIGHEST_COST, Math.max(LOWEST_COST, Math.round(20_000_000_000_000 / bitsPerSecond)));
}

/** Seconds that a port listens and then learns before it forwards (802.1D-2004 Table 17-1; from memory). */
export const FORWARD_DELAY = 15;
/** Seconds after which a bridge forgets a silent neighbour (the same table). */
export const MAX_AGE = 20;
/** Seconds after three lost hellos, the most that the rapid protocol takes to notice (802.1D-2004 17.21.23; from memory). */
export const THREE_HELLOS = 6;

/**
 * Seconds until frames go another way, by the timers of the older protocol: the port that discarded waits twice, and
 * before that for the age of what it heard, where the cable that failed is not its own bridge's.
 */
export function timeToReconverge(isOwn: boolean): number {
  return 2 * FORWARD_DELAY + (isOwn ? 0 : MAX_AGE);
}
