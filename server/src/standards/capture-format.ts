/** What the formats of capture files have in common: a sequence of parts, some of which hold a packet. */

export interface CapturedFrame {
  /** How the bytes start: a LINKTYPE_ number of the registry at tcpdump.org. */
  readonly linkType: number;
  /** Milliseconds since 1970, with fractions; undefined where the file does not say. */
  readonly time: number | undefined;
  /** The bytes that were captured. */
  readonly bytes: Uint8Array;
  /** The number of bytes on the wire. */
  readonly length: number;
}

/** A part of a file: its length, and its frame if it has one; or why the rest of the file cannot be read. */
export type Part = { readonly length: number; readonly frame?: CapturedFrame } | { readonly problem: string };

/** Reads the part at the start of the bytes; `undefined` where it needs more of them. */
export type CaptureFormat = (bytes: Uint8Array) => Part | undefined;

/** The most that is captured of a packet (MAXIMUM_SNAPLEN of libpcap, from memory); a longer one means damage. */
export const LARGEST_FRAME = 262_144;

export function dataView(bytes: Uint8Array): DataView {
  return new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
}
