/**
 * The classic capture file: a header, then packets.
 *
 * Source: draft-ietf-opsawg-pcap §4 (file header), §5 (packet record), from memory; checked against files of
 * tcpdump and editcap.
 */

import { type CaptureFormat, LARGEST_FRAME, dataView } from './capture-format.ts';

const FILE_HEADER = 24;
const PACKET_HEADER = 16;

/** By the number at the start of a file: the units a second of its times. */
const MAGIC: Readonly<Record<number, number>> = { 0xa1b2c3d4: 1e6, 0xa1b23c4d: 1e9 };

/** @returns `undefined` for a file of another format; needs four bytes */
export function pcapFormat(start: Uint8Array): CaptureFormat | undefined {
  const magic = dataView(start);
  const big = MAGIC[magic.getUint32(0)];
  const perSecond = big ?? MAGIC[magic.getUint32(0, true)];
  if (perSecond === undefined) return undefined;
  const littleEndian = big === undefined;
  let linkType: number | undefined;
  return (bytes) => {
    if (linkType === undefined) {
      if (bytes.length < FILE_HEADER) return undefined;
      // The upper half describes frame check sequences.
      linkType = dataView(bytes).getUint32(20, littleEndian) & 0xffff;
      return { length: FILE_HEADER };
    }
    if (bytes.length < PACKET_HEADER) return undefined;
    const header = dataView(bytes);
    const word = (at: number): number => header.getUint32(at, littleEndian);
    const captured = word(8);
    if (captured > LARGEST_FRAME) return { problem: `it is damaged: a packet of ${captured} bytes is longer than any` };
    if (bytes.length < PACKET_HEADER + captured) return undefined;
    const frame = {
      linkType,
      time: word(0) * 1000 + (word(4) / perSecond) * 1000,
      bytes: bytes.subarray(PACKET_HEADER, PACKET_HEADER + captured),
      length: word(12),
    };
    return { length: PACKET_HEADER + captured, frame };
  };
}
