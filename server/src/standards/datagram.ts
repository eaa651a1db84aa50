/**
 * IPv4 UDP datagrams in captured frames.
 *
 * Sources: link types of the registry at tcpdump.org (LINKTYPE_), from memory; IEEE 802.1Q (tags), RFC 791 §3.1, RFC
 * 768, read.
 */

import { type CapturedFrame, dataView } from './capture-format.ts';

export interface Datagram {
  readonly source: number;
  readonly destination: number;
  readonly sourcePort: number;
  readonly destinationPort: number;
  readonly ttl: number;
  readonly payload: Uint8Array;
  /** Less was captured than was sent. */
  readonly cut: boolean;
}

const IPV4 = 0x0800;
const TAGS: readonly number[] = [0x8100, 0x88a8, 0x9100];
const UDP = 17;

/**
 * By link type, the offset of the EtherType and the length of the header: Ethernet, and Linux's "any" interface, old
 * and new.
 */
const LINKS: Readonly<Record<number, { readonly type: number; readonly header: number }>> = {
  1: { type: 12, header: 14 },
  113: { type: 14, header: 16 },
  276: { type: 0, header: 20 },
};

/** Link types whose frames are IP from the first byte. */
const RAW: readonly number[] = [12, 101, 228];

/** Whether frames of a link type can be read. */
export function isKnownLink(linkType: number): boolean {
  return LINKS[linkType] !== undefined || RAW.includes(linkType);
}

/** The datagram in a frame; `undefined` where the frame has none, or only a fragment of one. */
export function datagramIn({ linkType, bytes }: CapturedFrame): Datagram | undefined {
  const start = ipStart(linkType, bytes);
  return start === undefined ? undefined : udpIn(bytes.subarray(start));
}

function ipStart(linkType: number, bytes: Uint8Array): number | undefined {
  if (RAW.includes(linkType)) return 0;
  const link = LINKS[linkType];
  if (link === undefined) return undefined;
  const frame = dataView(bytes);
  let type = word(frame, link.type);
  let at = link.header;
  while (type !== undefined && TAGS.includes(type)) {
    type = word(frame, at + 2);
    at += 4;
  }
  return type === IPV4 ? at : undefined;
}

function udpIn(packet: Uint8Array): Datagram | undefined {
  const ip = dataView(packet);
  if (packet.length < 20 || packet[0] === undefined || packet[0] >>> 4 !== 4 || packet[9] !== UDP) return undefined;
  const header = (packet[0] & 0x0f) * 4;
  // A fragment: more follow, or it is not the first.
  if (header < 20 || packet.length < header + 8 || (ip.getUint16(6) & 0x3fff) !== 0) return undefined;
  const end = Math.min(ip.getUint16(2), header + ip.getUint16(header + 4));
  if (end < header + 8) return undefined;
  return {
    source: ip.getUint32(12),
    destination: ip.getUint32(16),
    sourcePort: ip.getUint16(header),
    destinationPort: ip.getUint16(header + 2),
    ttl: packet[8] ?? 0,
    payload: packet.subarray(header + 8, end),
    cut: packet.length < end,
  };
}

function word(frame: DataView, at: number): number | undefined {
  return at + 2 <= frame.byteLength ? frame.getUint16(at) : undefined;
}
