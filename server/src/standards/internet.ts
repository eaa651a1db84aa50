/** Sizes of the Internet headers, in bytes. */

/** IPv4 header without options (RFC 791 §3.1, IHL 5; read). */
export const IPV4_HEADER = 20;

/** UDP header (RFC 768; read). */
export const UDP_HEADER = 8;
