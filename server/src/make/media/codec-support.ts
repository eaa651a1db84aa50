/**
 * Which codecs FFmpeg's RTP, transport stream and file formats carry, and which encoder it has for audio.
 *
 * Source: FFmpeg 5.1.9 of Debian 12, each one tried; test/make/media/codec-support.test.ts tries them again with the
 * installed FFmpeg. Its VP9 in RTP is experimental, and MPEG audio layer II comes out of an .mp4 file as layer III.
 */

export type Carrier = 'rtp' | 'mpegts' | 'mp4' | 'matroska';

const VIDEO: Readonly<Record<Carrier, readonly string[]>> = {
  rtp: ['h264', 'h265', 'mpeg2', 'mjpeg'],
  mpegts: ['h264', 'h265', 'mpeg2'],
  mp4: ['h264', 'h265', 'mpeg2', 'mjpeg', 'av1', 'vp9'],
  matroska: ['h264', 'h265', 'mpeg2', 'mjpeg', 'av1', 'vp9'],
};

const AUDIO: Readonly<Record<Carrier, readonly string[]>> = {
  rtp: ['pcma', 'pcmu', 'g722', 'aac', 'opus', 'mp2', 'l16'],
  mpegts: ['aac', 'opus', 'mp2', 'ac3'],
  mp4: ['aac', 'opus', 'ac3'],
  matroska: ['pcma', 'pcmu', 'g722', 'aac', 'opus', 'mp2', 'ac3', 'l16'],
};

/** Whether the carrier supports the codec; where the site names none, that is left to FFmpeg. */
export function supports(carrier: Carrier, medium: 'video' | 'audio', codec: string | undefined): boolean {
  return codec === undefined || (medium === 'video' ? VIDEO : AUDIO)[carrier].includes(codec);
}

/** Names of carriers for a refusal. */
export const CARRIER_NAMES: Readonly<Record<Carrier, string>> = {
  rtp: 'RTP',
  mpegts: 'a transport stream',
  mp4: 'an .mp4 file',
  matroska: 'an .mkv file',
};

/** FFmpeg's encoder for each audio codec. */
export const ENCODERS: Readonly<Record<string, string>> = {
  pcma: 'pcm_alaw',
  pcmu: 'pcm_mulaw',
  g722: 'g722',
  aac: 'aac',
  opus: 'libopus',
  mp2: 'mp2',
  ac3: 'ac3',
  l16: 'pcm_s16be',
};
