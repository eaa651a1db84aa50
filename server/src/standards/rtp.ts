/**
 * RTP: header sizes, ports, payload types, and how much audio a packet holds.
 *
 * Sources, each read: RFC 3550 §5.1, §11; RFC 3551 §4.2, §6 (Tables 4 and 5); RFC 2250 §2; RFC 3640 §3.3.6;
 * RFC 6184; RFC 7798. From memory: RFC 2326 §10.12 and RFC 7826 §14 (interleaving), RFC 7587 (Opus), RFC 4184 (AC-3),
 * RFC 2435 (JPEG), the samples in a frame of AAC, MPEG audio and AC-3.
 */

/** The registered port of RTP (RFC 3551 §8). */
export const RTP_PORT = 5004;

/** The registered port of RTSP (RFC 2326 §3.2, RFC 7826 §4.2). */
export const RTSP_PORT = 554;

/** Fixed header without contributing sources, in bytes (RFC 3550 §5.1). */
export const RTP_HEADER = 12;

/** `$`, channel and length before an RTP packet in an RTSP connection, in bytes (RFC 2326 §10.12, RFC 7826 §14). */
export const INTERLEAVED_HEADER = 4;

/** The RTP timestamp clock of video and of transport streams, in Hz (RFC 3551 §5, RFC 6184, RFC 7798, RFC 2250 §2). */
export const VIDEO_CLOCK_RATE = 90_000;

/**
 * The ports of a session that is given by one port: RTP on the even one, RTCP on the next odd one; an odd port means
 * the even one below it (RFC 3550 §11).
 */
export function rtpPort(port: number): { rtp: number; rtcp: number } {
  const rtp = port - (port % 2);
  return { rtp, rtcp: rtp + 1 };
}

export type AudioCodec = 'pcma' | 'pcmu' | 'g722' | 'l16' | 'opus' | 'aac' | 'mp2' | 'ac3';

export interface PayloadType {
  readonly number: number;
  /** The encoding name as in an `rtpmap` attribute. */
  readonly name: string;
  /** In Hz. G722 says 8000 although it samples at 16 000 Hz (RFC 3551 §4.5.2). */
  readonly clockRate: number;
  readonly channels?: number;
}

/**
 * The static payload types that a video site meets (RFC 3551 §6). H.264, H.265, AAC and Opus have none: they take a
 * dynamic number, 96 to 127.
 */
export const staticPayloadTypes: readonly PayloadType[] = [
  { number: 0, name: 'PCMU', clockRate: 8000, channels: 1 },
  { number: 3, name: 'GSM', clockRate: 8000, channels: 1 },
  { number: 8, name: 'PCMA', clockRate: 8000, channels: 1 },
  { number: 9, name: 'G722', clockRate: 8000, channels: 1 },
  { number: 10, name: 'L16', clockRate: 44_100, channels: 2 },
  { number: 11, name: 'L16', clockRate: 44_100, channels: 1 },
  { number: 14, name: 'MPA', clockRate: 90_000 },
  { number: 26, name: 'JPEG', clockRate: 90_000 },
  { number: 31, name: 'H261', clockRate: 90_000 },
  { number: 32, name: 'MPV', clockRate: 90_000 },
  { number: 33, name: 'MP2T', clockRate: 90_000 },
  { number: 34, name: 'H263', clockRate: 90_000 },
];

/** A duration of exactly `samples / rate` seconds. */
export interface PacketInterval {
  readonly samples: number;
  readonly rate: number;
}

/** The sample rate of a codec where none is given, in Hz: fixed for the G.7xx ones and Opus, else the usual one. */
export function defaultSampleRate(codec: AudioCodec): number {
  switch (codec) {
    case 'pcma':
    case 'pcmu':
      return 8000;
    case 'g722':
      return 16_000;
    default:
      return 48_000;
  }
}

/** Samples in one coded frame: AAC 1024 (ISO/IEC 14496-3), MPEG audio layer II 1152 (ISO/IEC 11172-3), AC-3 1536. */
const samplesPerFrame: Partial<Record<AudioCodec, number>> = { aac: 1024, mp2: 1152, ac3: 1536 };

/**
 * How much audio an RTP packet holds by default. Sample-based codecs and Opus: 20 ms, in whole
 * samples (RFC 3551 §4.2; RFC 7587 §4.2). Frame-based ones: one frame, as in RFC 3640 for a single access unit. A
 * sender may pack several: FFmpeg 5.1.9 was seen to put five AAC frames of 96 kb/s into a packet. One is the least, and
 * gives the most packets.
 */
export function packetInterval(codec: AudioCodec, sampleRate: number = defaultSampleRate(codec)): PacketInterval {
  return { samples: samplesPerFrame[codec] ?? Math.max(1, Math.floor(sampleRate / 50)), rate: sampleRate };
}

export type VideoCodec = 'h264' | 'h265' | 'mjpeg';

/**
 * Bytes that a codec's payload format puts between the RTP header and the coded data:
 * H.264 FU-A 2 (RFC 6184 §5.8), H.265 FU 3 (RFC 7798 §4.4.3), JPEG 8 (RFC 2435 §3.1), AAC in mode AAC-hbr 2 of length
 * and 2 for one access unit (RFC 3640 §3.3.6), MPEG audio 4 (RFC 2250 §3.5), AC-3 2 (RFC 4184 §4.1.1).
 * A fragmentation header replaces the header of the unit that it fragments, so the first fragment of a picture gains
 * 1 byte less than given here.
 */
export function payloadHeader(codec: AudioCodec | VideoCodec): number {
  return payloadHeaders[codec] ?? 0;
}

const payloadHeaders: Partial<Record<AudioCodec | VideoCodec, number>> = {
  h264: 2,
  h265: 3,
  mjpeg: 8,
  aac: 4,
  mp2: 4,
  ac3: 2,
};
