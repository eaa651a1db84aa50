/**
 * TCP as it carries a long flow: the segments one way, the acknowledgements the other.
 *
 * Sources: RFC 9293 §3.1 and RFC 8200 §8.3 (20-byte header; RFC 8200 read, RFC 9293 from memory), RFC 7323 §3.2 and
 * App. A (timestamps option, 12 bytes with its padding; from memory), RFC 1122 §4.2.3.2 (from memory) and RFC 5681 §4.2
 * (an acknowledgement for at least every second full segment, and no more than one for each; read).
 */

import { FCS, frameBytes, MAX_PAYLOAD } from './ethernet.ts';
import { IPV4_HEADER } from './internet.ts';

/** Header without options, in bytes. */
export const TCP_HEADER = 20;

/** The timestamps option with two bytes of padding, in every segment; common systems have it on by default. */
export const TIMESTAMP_OPTION = 12;

/** IP, TCP and its timestamps, in bytes. */
export const HEADERS = IPV4_HEADER + TCP_HEADER + TIMESTAMP_OPTION;

/** The most data in one segment over Ethernet with timestamps, in bytes. */
export const MAXIMUM_SEGMENT = MAX_PAYLOAD - HEADERS;

/**
 * Full segments for each acknowledgement, as the standard asks. This is not a bound: a receiver may acknowledge each
 * segment, or several that come in together as one.
 *
 * A small segment that comes alone gets its own acknowledgement: Linux sends it as soon as the program has read
 * everything (`tcp_cleanup_rbuf` in its source, read), or a little later.
 */
export const ACK_EVERY = 2;

/** The frame of an acknowledgement without data: 66 bytes without FCS, untagged. */
export const ACK_FRAME_WITHOUT_FCS = frameBytes(HEADERS, false).withFcs - FCS;
