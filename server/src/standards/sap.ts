/**
 * Announcements of sessions: packets, and how often they may be sent.
 *
 * Source: RFC 2974 §3 (groups, port, TTL), §3.1 (interval), §6 (packet), read; §4 (deletion), §5 (modification), from
 * memory. The groups are in multicast.ts.
 */

import { fnv1a, folded } from './fnv.ts';
import { formatAddress } from './ipv4.ts';

export const SAP_PORT = 9875;
/** Routers at the edge of the scope stop announcements, not their TTL. */
export const SAP_TTL = 255;
/** bit/s that all announcements on a group may take together, by default. */
export const SAP_BANDWIDTH = 4000;
/** Seconds; the shortest base interval between two announcements of one session. */
export const SAP_INTERVAL = 300;
/** Bytes that a packet should stay below, or the path's MTU where that is smaller. */
export const SAP_LARGEST = 1024;

const SDP_TYPE = 'application/sdp';

export interface Announcement {
  /** The session is over. */
  readonly deletion: boolean;
  /** 16 bits that identify the announcement together with the source; another text has another hash. */
  readonly hash: number;
  /** The address that the announcer gives as its own. */
  readonly source: string;
  /** The description, or the o= line of a deletion; `sealed` says why it cannot be read. */
  readonly payload: string | { readonly sealed: string };
}

const utf8 = new TextEncoder();
const lenient = new TextDecoder();

/** A packet for IPv4, not encrypted and without authentication. */
export function encodeAnnouncement(deletion: boolean, hash: number, source: number, payload: string): Uint8Array {
  const body = utf8.encode(`${SDP_TYPE}\0${payload}`);
  const packet = new Uint8Array(8 + body.length);
  const header = new DataView(packet.buffer);
  header.setUint8(0, 0x20 | (deletion ? 0x04 : 0));
  header.setUint16(2, hash);
  header.setUint32(4, source);
  packet.set(body, 8);
  return packet;
}

/** @returns what is wrong with it, as a clause, where it is no SAP packet of version 1 */
export function decodeAnnouncement(packet: Uint8Array): Announcement | { readonly unreadable: string } {
  const header = new DataView(packet.buffer, packet.byteOffset, packet.byteLength);
  if (packet.length < 8) return { unreadable: `it has ${packet.length} bytes, and a header 8` };
  const flags = header.getUint8(0);
  if (flags >>> 5 !== 1) return { unreadable: `it is of version ${flags >>> 5}, not 1` };
  const isIpv6 = (flags & 0x10) !== 0;
  const start = 4 + (isIpv6 ? 16 : 4) + 4 * header.getUint8(1);
  if (packet.length < start) return { unreadable: `it ends within its header` };
  const source = isIpv6 ? ipv6(header) : formatAddress(header.getUint32(4));
  const sealed = (flags & 0x02) !== 0 ? 'encrypted' : (flags & 0x01) !== 0 ? 'compressed' : undefined;
  const payload = sealed === undefined ? unwrapped(packet.subarray(start)) : { sealed };
  return { deletion: (flags & 0x04) !== 0, hash: header.getUint16(2), source, payload };
}

/** The payload after its type, which a packet with a description may omit (§6). */
function unwrapped(body: Uint8Array): Announcement['payload'] {
  const text = lenient.decode(body);
  if (/^(?:v=0|o=)/.test(text)) return text;
  const end = text.indexOf('\0');
  const type = text.slice(0, Math.max(end, 0));
  return type === SDP_TYPE ? text.slice(end + 1) : { sealed: 'of another type' };
}

function ipv6(header: DataView): string {
  return Array.from({ length: 8 }, (_, index) => header.getUint16(4 + 2 * index).toString(16)).join(':');
}

/**
 * A hash for a text that is announced: not 0, which old announcers use for everything (§6), and none that the announcer
 * uses for another text.
 */
export function messageHash(payload: string, taken: ReadonlySet<number> = new Set()): number {
  let hash = Number(folded(folded(fnv1a(payload), 32), 16));
  while (hash === 0 || taken.has(hash)) hash = (hash + 1) % 0x10000;
  return hash;
}

export interface Pace {
  /** bit/s */
  readonly bandwidth: number;
  /** Seconds. */
  readonly leastInterval: number;
}

export const SAP_PACE: Pace = { bandwidth: SAP_BANDWIDTH, leastInterval: SAP_INTERVAL };

/** The base interval in seconds between announcements of `size` bytes, where `count` sessions are announced (§3.1). */
export function baseInterval(count: number, size: number, { bandwidth, leastInterval }: Pace = SAP_PACE): number {
  return Math.max(leastInterval, (8 * count * size) / bandwidth);
}

/** Seconds from one announcement to the next; `random`, from 0 to 1, keeps announcers from sending at the same time. */
export function nextGap(interval: number, random: number): number {
  return interval + random * interval * (2 / 3) - interval / 3;
}

/** Seconds without an announcement after which a session counts as over (§4). */
export function implicitTimeout(interval: number): number {
  return Math.max(10 * interval, 3600);
}
