/**
 * The time that a group-addressed frame takes of a Wi-Fi channel.
 *
 * Such a frame is sent once for all stations of a cell, at a basic rate, without acknowledgement, and alone: it is
 * never aggregated with others (RFC 9119 §3.1.1 and §3.1.2, read). IEEE 802.11 itself was not read: the times and the
 * rules of symbols are from memory, and hold against ns-3 3.37, a general network simulator, as
 * test/standards/wifi.test.ts says. Times are in microseconds.
 */

/** bit/s: the lowest rate of OFDM, and of DSSS and CCK, which 2.4 GHz has too. */
export const OFDM_RATES: readonly number[] = [6e6, 9e6, 12e6, 18e6, 24e6, 36e6, 48e6, 54e6];
export const DSSS_RATES: readonly number[] = [1e6, 2e6, 5.5e6, 11e6];

/** The rate for groups where undeclared: the lowest of 5 GHz. */
export const DEFAULT_BASIC_RATE = 6e6;

/** Bytes around an IP packet: LLC and SNAP 8, MAC header with QoS 26, FCS 4, and 16 of CCMP encryption. */
export const MPDU_OVERHEAD = 8 + 26 + 4 + 16;

/** SIFS and three slots before a frame of best effort, and the mean of a random wait of up to 15 slots. */
const OFDM_WAIT = 16 + 3 * 9 + 7.5 * 9;
/** SIFS and two slots of 20 µs, and the mean wait of up to 31 slots. */
const DSSS_WAIT = 10 + 2 * 20 + 15.5 * 20;

/** The time on the air of a frame of so many bytes, from its preamble on, at a rate in bit/s of OFDM or DSSS. */
export function frameTime(bytes: number, rate: number): number {
  const bitsPerMicrosecond = rate / 1e6;
  // The long preamble, which every station understands.
  if (DSSS_RATES.includes(rate)) return 192 + Math.ceil((8 * bytes) / bitsPerMicrosecond);
  // Preamble and signal field, then symbols of 4 µs that carry 16 service bits and 6 tail bits besides.
  return 20 + 4 * Math.ceil((22 + 8 * bytes) / (4 * bitsPerMicrosecond));
}

/** The time that an IP packet of so many bytes takes of the channel when it is sent to a group. */
export function groupAirtime(packet: number, rate: number): number {
  return (DSSS_RATES.includes(rate) ? DSSS_WAIT : OFDM_WAIT) + frameTime(packet + MPDU_OVERHEAD, rate);
}
