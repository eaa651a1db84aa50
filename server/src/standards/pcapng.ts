/**
 * The newer capture file: blocks of several kinds, and packets of several interfaces.
 *
 * Source: draft-ietf-opsawg-pcapng §3 (blocks, options), §4.1 (section header), §4.2 (interface), §4.3 (enhanced
 * packet), §4.4 (simple packet), appendix A (obsolete packet), from memory; checked against files of tshark and
 * editcap.
 */

import { type CaptureFormat, type CapturedFrame, LARGEST_FRAME, type Part, dataView } from './capture-format.ts';

const SECTION_HEADER = 0x0a0d0d0a;
const BYTE_ORDER = 0x1a2b3c4d;
const INTERFACE = 1;
const OBSOLETE_PACKET = 2;
const SIMPLE_PACKET = 3;
const ENHANCED_PACKET = 6;

/** Type and length at the start, and the length again at the end. */
const SHORTEST = 12;
/** A packet or the description of an interface, with comments and other options. */
const LARGEST_BLOCK = LARGEST_FRAME + 1_000_000;

/** Interfaces in a file; no machine has so many. */
const MOST_INTERFACES = 100_000;

interface Described {
  readonly linkType: number;
  /** The most that is captured of a packet; 0 for all. */
  readonly snapLength: number;
  /** Units a second of its times. */
  readonly perSecond: number;
  /** Seconds to add to its times. */
  readonly offset: number;
}

/** @returns `undefined` for a file of another format; needs four bytes */
export function pcapngFormat(start: Uint8Array): CaptureFormat | undefined {
  // It reads the same in both byte orders.
  if (dataView(start).getUint32(0) !== SECTION_HEADER) return undefined;
  let littleEndian = false;
  let interfaces: Described[] = [];
  return (bytes): Part | undefined => {
    if (bytes.length < SHORTEST) return undefined;
    const block = dataView(bytes);
    const isSection = block.getUint32(0) === SECTION_HEADER;
    if (isSection) {
      littleEndian = block.getUint32(8, true) === BYTE_ORDER;
      if (!littleEndian && block.getUint32(8) !== BYTE_ORDER)
        return { problem: 'it is damaged: a section says no order of bytes' };
      interfaces = [];
    }
    const type = block.getUint32(0, littleEndian);
    const length = block.getUint32(4, littleEndian);
    if (length < SHORTEST || length % 4 !== 0)
      return { problem: `it is damaged: a block of ${length} bytes cannot be` };
    if (![INTERFACE, OBSOLETE_PACKET, SIMPLE_PACKET, ENHANCED_PACKET].includes(type)) return { length };
    if (length > LARGEST_BLOCK) return { problem: `it is damaged: a packet of ${length} bytes is longer than any` };
    if (bytes.length < length) return undefined;
    const body = dataView(bytes.subarray(8, length - 4));
    if (block.getUint32(length - 4, littleEndian) !== length)
      return { problem: 'it is damaged: a block says two lengths' };
    if (type === INTERFACE) {
      const described = readInterface(body, littleEndian);
      if (described === undefined || interfaces.length === MOST_INTERFACES)
        return { problem: 'it is damaged: an interface cannot be read' };
      interfaces.push(described);
      return { length };
    }
    const frame = readFrame(type, body, littleEndian, interfaces);
    return typeof frame === 'string' ? { problem: `it is damaged: ${frame}` } : { length, frame };
  };
}

function readInterface(body: DataView, littleEndian: boolean): Described | undefined {
  if (body.byteLength < 8) return undefined;
  let perSecond = 1e6;
  let offset = 0;
  for (let at = 8; at + 4 <= body.byteLength;) {
    const code = body.getUint16(at, littleEndian);
    const size = body.getUint16(at + 2, littleEndian);
    if (code === 0 || at + 4 + size > body.byteLength) break;
    if (code === 9 && size === 1) perSecond = resolution(body.getUint8(at + 4));
    if (code === 14 && size === 8) offset = Number(body.getBigInt64(at + 4, littleEndian));
    at += 4 + size + ((4 - (size % 4)) % 4);
  }
  return { linkType: body.getUint16(0, littleEndian), snapLength: body.getUint32(4, littleEndian), perSecond, offset };
}

/** `if_tsresol`: a power of ten, or of two where the highest bit is set. */
function resolution(value: number): number {
  return value < 0x80 ? 10 ** value : 2 ** (value - 0x80);
}

/** The packet of one of the three kinds of block, or what is wrong with it as a clause. */
function readFrame(
  type: number,
  body: DataView,
  littleEndian: boolean,
  interfaces: readonly Described[],
): CapturedFrame | string {
  const word = (at: number): number => body.getUint32(at, littleEndian);
  const header = type === SIMPLE_PACKET ? 4 : 20;
  if (body.byteLength < header) return 'a packet without its header';
  const index = type === SIMPLE_PACKET ? 0 : type === ENHANCED_PACKET ? word(0) : body.getUint16(0, littleEndian);
  const at = interfaces[index];
  if (at === undefined) return `a packet is of interface ${index}, which it does not describe`;
  const length = type === SIMPLE_PACKET ? word(0) : word(16);
  const kept = at.snapLength === 0 ? length : Math.min(length, at.snapLength);
  const captured = type === SIMPLE_PACKET ? Math.min(kept, body.byteLength - header) : word(12);
  if (captured > body.byteLength - header) return 'a packet is longer than its block';
  const time = type === SIMPLE_PACKET ? undefined : ((word(4) * 2 ** 32 + word(8)) / at.perSecond + at.offset) * 1000;
  return {
    linkType: at.linkType,
    time,
    bytes: new Uint8Array(body.buffer, body.byteOffset + header, captured),
    length,
  };
}
