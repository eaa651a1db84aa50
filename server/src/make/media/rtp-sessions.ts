/** The RTP sessions of a stream: which medium goes to which port, with which payload type. */

import { type PayloadType, VIDEO_CLOCK_RATE, defaultSampleRate, staticPayloadTypes } from '../../standards/rtp.ts';
import type { Audio, Media, Stream, Video } from '../../site/model.ts';

export interface RtpSession {
  readonly medium: 'video' | 'audio';
  /** The RTP port, as declared; RTCP has the port above. */
  readonly port: number;
  readonly rtcp: number;
  /** `undefined` where the site does not name the codec. */
  readonly payload: PayloadType | undefined;
}

/** Dynamic payload types, 96 to 127, mean what the session description says (RFC 3551 §3). */
const DYNAMIC_VIDEO = 96;
const DYNAMIC_AUDIO = 97;

/**
 * Video on the stream's own port, and audio on the next pair, or on the stream's own port where there is no video (RFC
 * 3550 §11; the rules about ports assume the next pair). A transport stream in RTP is one session. No session where the
 * stream is not RTP over UDP, or has no port.
 */
export function rtpSessions({ transport, port }: Stream, { video, audio }: Media): readonly RtpSession[] {
  if (port === undefined) return [];
  if (transport === 'ts-rtp')
    return [{ medium: 'video', port, rtcp: port + 1, payload: staticType('MP2T', VIDEO_CLOCK_RATE) }];
  if (transport !== 'rtp') return [];
  const sessions: RtpSession[] = [];
  if (video !== undefined) sessions.push({ medium: 'video', port, rtcp: port + 1, payload: videoPayload(video) });
  if (audio !== undefined) {
    const own = video === undefined ? port : port + 2;
    sessions.push({ medium: 'audio', port: own, rtcp: own + 1, payload: audioPayload(audio) });
  }
  return sessions;
}

function staticType(name: string, clockRate: number, channels?: number): PayloadType | undefined {
  return staticPayloadTypes.find(
    (type) => type.name === name && type.clockRate === clockRate && (type.channels ?? channels) === channels,
  );
}

/**
 * RFC 6184, RFC 7798, RFC 2250 (MPV), RFC 2435, RFC 9628 (VP9); AV1 by the payload format of its own authors, from
 * memory.
 */
const VIDEO_NAMES: Readonly<Record<string, string>> = {
  h264: 'H264',
  h265: 'H265',
  mpeg2: 'MPV',
  mjpeg: 'JPEG',
  vp9: 'VP9',
  av1: 'AV1',
};

function videoPayload({ codec }: Video): PayloadType | undefined {
  const name = codec === undefined ? undefined : VIDEO_NAMES[codec];
  if (name === undefined) return undefined;
  return staticType(name, VIDEO_CLOCK_RATE) ?? { number: DYNAMIC_VIDEO, name, clockRate: VIDEO_CLOCK_RATE };
}

/** A static type is for one clock rate and number of channels: A-law at 16 kHz takes a dynamic one. */
function audioPayload({ codec, sampleRate, channels }: Audio): PayloadType | undefined {
  const dynamic = (name: string, clockRate: number, count?: number): PayloadType => ({
    number: DYNAMIC_AUDIO,
    name,
    clockRate,
    ...(count === undefined ? {} : { channels: count }),
  });
  switch (codec) {
    case 'pcma':
    case 'pcmu': {
      const [name, rate, count] = [codec.toUpperCase(), sampleRate ?? defaultSampleRate(codec), channels ?? 1];
      return staticType(name, rate, count) ?? dynamic(name, rate, count);
    }
    case 'g722':
      // The clock says 8000 although it samples at 16 000 Hz (RFC 3551 §4.5.2).
      return staticType('G722', 8000, channels ?? 1) ?? dynamic('G722', 8000, channels);
    case 'mp2':
      // The clock is that of MPEG systems at any sample rate (RFC 3551 §4.5.13).
      return staticType('MPA', 90_000);
    case 'opus':
      // Always 48 kHz and two channels, whatever is inside (RFC 7587 §7, from memory).
      return dynamic('opus', 48_000, 2);
    case 'l16': {
      const rate = sampleRate ?? defaultSampleRate(codec);
      return staticType('L16', rate, channels) ?? dynamic('L16', rate, channels);
    }
    case 'aac':
      return dynamic('MPEG4-GENERIC', sampleRate ?? defaultSampleRate(codec), channels);
    case 'ac3':
      return dynamic('ac3', sampleRate ?? defaultSampleRate(codec), channels);
    default:
      return undefined;
  }
}
