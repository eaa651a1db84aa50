/**
 * What an IP packet costs on an Ethernet link.
 *
 * Sources: RFC 5180 App. A.1 (8 bytes of preamble and start delimiter, 12 of gap, 4 of VLAN tag, frame rate) and
 * RFC 2544 §9.1 (64 to 1518 bytes), both read; MAC header, FCS and greatest payload as in Linux's if_ether.h, read.
 * The rules are IEEE 802.3's and 802.1Q's, whose text was not read. All sizes are in bytes.
 */

/** Destination, source and EtherType. */
export const MAC_HEADER = 14;
/** Frame check sequence. */
export const FCS = 4;
/** The 802.1Q tag that a frame carries on a trunk. */
export const VLAN_TAG = 4;
export const PREAMBLE_AND_SFD = 8;
/** The least gap between frames, 96 bit times. */
export const INTER_PACKET_GAP = 12;
/** The shortest frame, with FCS and without a tag. */
export const MIN_FRAME = 64;
/** The longest IP packet in a frame that is not a jumbo frame. */
export const MAX_PAYLOAD = 1500;

/**
 * The frame around an IP packet. `withoutFcs` is what a host, a packet capture and many switches count, `withFcs` the
 * frame of the standard, and `line` what occupies the link: with preamble, start delimiter and gap.
 */
export interface FrameBytes {
  readonly withoutFcs: number;
  readonly withFcs: number;
  readonly line: number;
}

/**
 * The frame around an IP packet of `ipBytes`.
 *
 * The sender pads a short packet to the shortest frame, and the switch adds a tag to that: the shortest tagged frame
 * has 68 bytes. 802.1Q lets a sender of tagged frames pad to 64 bytes instead; this then counts up to 4 bytes too much,
 * for IP packets of less than 46 bytes only.
 */
export function frameBytes(ipBytes: number, tagged: boolean): FrameBytes {
  const withFcs = Math.max(MAC_HEADER + ipBytes + FCS, MIN_FRAME) + (tagged ? VLAN_TAG : 0);
  return { withoutFcs: withFcs - FCS, withFcs, line: PREAMBLE_AND_SFD + withFcs + INTER_PACKET_GAP };
}

/** The most frames per second of one size (with FCS) that a link carries in one direction (RFC 5180 App. A.1). */
export function maxFrameRate(bitsPerSecond: number, frameWithFcs: number): number {
  return Math.floor(bitsPerSecond / (8 * (PREAMBLE_AND_SFD + frameWithFcs + INTER_PACKET_GAP)));
}
