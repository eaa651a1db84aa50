/** What formats of capture files have in common: parts behind one another, some of which hold a packet. */

export interface CapturedFrame {
  /** How the bytes start: a LINKTYPE_ number of the registry at tcpdump.org. */
  readonly linkType: number;
  /** Milliseconds since 1970, with fractions; undefined where the file does not say. */
  readonly time: number | undefined;
  /** As much as was captured. */
  readonly bytes: Uint8Array;
  /** As many as were on the wire. */
  readonly length: number;
}

/** What stands at a place in a file: its length, and the frame in it if any; or why nothing can be read from there on. */
export type Part = { readonly length: number; readonly frame?: CapturedFrame } | { readonly problem: string };

/** Reads the part that starts with the first of the bytes; undefined where more of them are needed. */
export type CaptureFormat = (bytes: Uint8Array) => Part | undefined;

/** The most that is captured of a packet (MAXIMUM_SNAPLEN of libpcap, from memory); what says more is damaged. */
export const LARGEST_FRAME = 262_144;
