/**
 * What a stream costs on a wire: its packets, and from them the payload, frame and line rates.
 *
 * The payload is the encoded media as declared. Each run of packets of one make is kept with the bytes of its headers,
 * so that every rate can be shown as a sum. RTCP and session set-up are left out: a few packets a minute.
 */

import { lastResult, perObject } from '../memo.ts';
import { type FrameBytes, frameBytes } from '../standards/ethernet.ts';
import { IPV4_HEADER, UDP_HEADER } from '../standards/internet.ts';
import {
  type AudioCodec,
  INTERLEAVED_HEADER,
  RTP_HEADER,
  defaultSampleRate,
  packetInterval,
  payloadHeader,
} from '../standards/rtp.ts';
import { ACK_EVERY, MAXIMUM_SEGMENT, TCP_HEADER, TIMESTAMP_OPTION } from '../standards/tcp.ts';
import { DEFAULT_FRAME_RATE, PACKET, PACKETS_PER_DATAGRAM, multiplexRate } from '../standards/transport-stream.ts';
import type { Audio, Media, MediaRate, Stream, Video } from '../site/model.ts';

/** bit/s at the declared rate and at the declared peak. */
export interface Load {
  readonly nominal: number;
  readonly peak: number;
}

/** bit/s, whole. `frame` is without the check sequence, as hosts and many switches count. */
export interface WireRates {
  readonly payload: Load;
  readonly frame: Load;
  readonly frameWithFcs: Load;
  readonly line: Load;
}

/** Packets of one make that a stream sends or that answer it. */
export interface PacketRun {
  readonly what: 'video' | 'audio' | 'transport stream' | 'acknowledgements' | 'data';
  /** Bytes of media in a packet, on average. */
  readonly media: Load;
  /** The headers before the media inside the Ethernet frame, outermost first; bytes. */
  readonly headers: readonly { readonly name: string; readonly bytes: number }[];
  /** Packets per second. */
  readonly perSecond: Load;
}

/** The rates of one copy in frames without and with a VLAN tag, and of the replies. */
export interface CrossingRates {
  readonly untagged: WireRates;
  readonly tagged: WireRates;
  readonly reply: { readonly untagged: WireRates; readonly tagged: WireRates };
}

export interface StreamRates extends CrossingRates {
  readonly payload: Load;
  readonly runs: readonly PacketRun[];
  /** Replies to the source: the most TCP acknowledgements that there can be. */
  readonly replies: readonly PacketRun[];
  /** The fewest acknowledgements: a receiver acknowledges segments that arrive together once. */
  readonly fewestReplies: readonly PacketRun[];
}

/** Media bytes in a packet where undeclared: well inside an Ethernet frame. Common practice, no source. */
export const PACKET_SIZE = 1400;

/** The rates of a stream that consists of `media`. */
export function streamRates(stream: Stream, { video, audio, broadcast }: Media): StreamRates {
  return ratesOf(stream)(video, audio, broadcast);
}

// A stream's media may come from the stream it carries, so its own item does not decide its rates.
const ratesOf = perObject((stream: Stream) =>
  lastResult((video: Video | undefined, audio: Audio | undefined, broadcast: MediaRate | undefined) =>
    compute(stream, { video, audio, broadcast }),
  ),
);

function compute(stream: Stream, media: Media): StreamRates {
  const payload = payloadOf(stream, media);
  const runs = runsOf(stream, media);
  const isAcknowledged = stream.transport === 'rtsp' && runs.length > 0;
  const replies = isAcknowledged ? [acknowledgements(runs)] : [];
  const fewestReplies = isAcknowledged ? [fewestAcknowledgements(runs, media.video)] : [];
  const none = { nominal: 0, peak: 0 };
  return {
    payload,
    runs,
    replies,
    fewestReplies,
    untagged: wireRates(runs, payload, false),
    tagged: wireRates(runs, payload, true),
    reply: { untagged: wireRates(replies, none, false), tagged: wireRates(replies, none, true) },
  };
}

function payloadOf(stream: Stream, media: Media): Load {
  const { video, audio } = media;
  const sum = (part: 'nominal' | 'peak'): number => (video?.rate?.[part] ?? 0) + (audio?.rate?.[part] ?? 0);
  const declared = { nominal: sum('nominal'), peak: sum('peak') };
  // Of a multiplex that is sent on unchanged, such as a broadcast service, only the rate is known.
  if (declared.peak === 0 && isTransportStream(stream)) return multiplexOf(stream, media);
  return declared;
}

function isTransportStream(stream: Stream): boolean {
  return stream.transport === 'ts-udp' || stream.transport === 'ts-rtp';
}

function runsOf(stream: Stream, media: Media): PacketRun[] {
  if (isTransportStream(stream)) {
    const rate = multiplexOf(stream, media);
    const size = stream.packetSize ?? PACKETS_PER_DATAGRAM * PACKET;
    const rtp = stream.transport === 'ts-rtp' ? [{ name: 'RTP', bytes: RTP_HEADER }] : [];
    return rate.peak === 0 ? [] : [run('transport stream', rate, size, [...UDP, ...rtp])];
  }
  const runs: PacketRun[] = [];
  const size = stream.packetSize ?? PACKET_SIZE;
  const rtsp = stream.transport === 'rtsp';
  const { video, audio } = media;
  if (video?.rate !== undefined && video.rate.peak > 0) {
    if (rtsp) {
      // The packets of a picture are written to the connection at once and leave in full segments except the last.
      const share = size / (size + INTERLEAVED_HEADER + RTP_HEADER);
      const inSegment = MAXIMUM_SEGMENT * share;
      runs.push(
        pictureRun(video, inSegment, [...TCP, { name: 'RTP and interleaving', bytes: MAXIMUM_SEGMENT - inSegment }]),
      );
    } else {
      runs.push(pictureRun(video, size, [...UDP, { name: 'RTP', bytes: RTP_HEADER }]));
    }
  }
  if (audio?.rate !== undefined && audio.rate.peak > 0) runs.push(audioRun(audio, size, rtsp));
  return runs;
}

const IP = { name: 'IPv4', bytes: IPV4_HEADER };
const UDP = [IP, { name: 'UDP', bytes: UDP_HEADER }];
const TCP = [IP, { name: 'TCP with timestamps', bytes: TCP_HEADER + TIMESTAMP_OPTION }];

function run(what: PacketRun['what'], rate: Load, media: number, headers: PacketRun['headers']): PacketRun {
  const perSecond = { nominal: rate.nominal / (8 * media), peak: rate.peak / (8 * media) };
  return { what, media: { nominal: media, peak: media }, headers, perSecond };
}

/**
 * The packets of pictures of at most `max` bytes each. The last packet of a picture is half full on average, and every
 * picture has at least one (RFC 6184 §5.1: no packet holds parts of two pictures).
 */
function pictureRun(video: Video, max: number, headers: PacketRun['headers']): PacketRun {
  const rate = video.rate ?? { nominal: 0, peak: 0 };
  const pictures = video.frameRate ?? DEFAULT_FRAME_RATE;
  const perSecond = (part: keyof Load): number => Math.max(pictures, rate[part] / (8 * max) + pictures / 2);
  const packets = { nominal: perSecond('nominal'), peak: perSecond('peak') };
  const media = { nominal: rate.nominal / 8 / packets.nominal, peak: rate.peak / 8 / packets.peak };
  return { what: 'video', media, headers, perSecond: packets };
}

/** Sound goes out in packets of a fixed time, so that a higher rate makes them larger, not more. */
function audioRun(audio: Audio, size: number, rtsp: boolean): PacketRun {
  const rate = audio.rate ?? { nominal: 0, peak: 0 };
  const codec = audioCodec(audio.codec);
  const { samples, rate: sampleRate } = packetInterval(codec, audio.sampleRate ?? defaultSampleRate(codec));
  const intervals = sampleRate / samples;
  // Uncompressed sound does not fit one packet; it is split evenly.
  const packets = intervals * Math.max(1, Math.ceil(rate.peak / 8 / intervals / size));
  const extra = payloadHeader(codec);
  const format = extra === 0 ? [] : [{ name: 'payload format', bytes: extra }];
  const rtp = rtsp ? [...TCP, { name: 'interleaving', bytes: INTERLEAVED_HEADER }] : UDP;
  return {
    what: 'audio',
    media: { nominal: rate.nominal / 8 / packets, peak: rate.peak / 8 / packets },
    headers: [...rtp, { name: 'RTP', bytes: RTP_HEADER }, ...format],
    perSecond: { nominal: packets, peak: packets },
  };
}

function audioCodec(name: string | undefined): AudioCodec {
  const codecs: readonly AudioCodec[] = ['pcma', 'pcmu', 'g722', 'l16', 'opus', 'aac', 'mp2', 'ac3'];
  return codecs.find((codec) => codec === name) ?? 'aac';
}

/** One acknowledgement for every two segments of a picture, and one for each packet of sound. */
function acknowledgements(runs: readonly PacketRun[]): PacketRun {
  const sum = (part: keyof Load): number =>
    runs.reduce((total, { what, perSecond }) => total + perSecond[part] / (what === 'video' ? ACK_EVERY : 1), 0);
  return {
    what: 'acknowledgements',
    media: { nominal: 0, peak: 0 },
    headers: TCP,
    perSecond: { nominal: sum('nominal'), peak: sum('peak') },
  };
}

/** One acknowledgement for each picture and each packet of sound: the segments of a picture arrive together. */
function fewestAcknowledgements(runs: readonly PacketRun[], video: Video | undefined): PacketRun {
  const pictures = video?.frameRate ?? DEFAULT_FRAME_RATE;
  const perSecond = runs.reduce((sum, run) => sum + (run.what === 'video' ? pictures : run.perSecond.nominal), 0);
  return {
    what: 'acknowledgements',
    media: { nominal: 0, peak: 0 },
    headers: TCP,
    perSecond: { nominal: perSecond, peak: perSecond },
  };
}

/** bit/s of the transport stream: as declared, or as large as its parts make it. */
export function multiplexOf(stream: Stream, media: Media): Load {
  if (stream.muxRate !== undefined) return { nominal: stream.muxRate, peak: stream.muxRate };
  return transportStreamOf(media);
}

/** bit/s of video and audio in a transport stream of their own; a broadcast keeps its rate. */
export function transportStreamOf({ video, audio, broadcast }: Media): Load {
  if (broadcast !== undefined) return { nominal: broadcast.nominal, peak: broadcast.peak };
  const at = (part: 'nominal' | 'peak'): number => {
    const videoRate = video?.rate?.[part] ?? 0;
    const audioRate = audio?.rate?.[part] ?? 0;
    if (videoRate + audioRate === 0) return 0;
    return multiplexRate({
      videoBitsPerSecond: videoRate,
      ...frameRateOf(video),
      audio: audioRate === 0 ? [] : [{ bitsPerSecond: audioRate, packetsPerSecond: audioFrames(audio) }],
    });
  };
  return { nominal: at('nominal'), peak: at('peak') };
}

function frameRateOf(video: Video | undefined): { framesPerSecond?: number } {
  return video?.frameRate === undefined ? {} : { framesPerSecond: video.frameRate };
}

function audioFrames(audio: Audio | undefined): number {
  const codec = audioCodec(audio?.codec);
  const { samples, rate } = packetInterval(codec, audio?.sampleRate ?? defaultSampleRate(codec));
  return rate / samples;
}

/** Bytes before the media inside the Ethernet frame. */
export function headerBytes(run: PacketRun): number {
  return run.headers.reduce((total, header) => total + header.bytes, 0);
}

/** The bit rates of runs of packets; rounded once, to whole bits per second, so that sums of them are exact. */
export function wireRates(runs: readonly PacketRun[], payload: Load, tagged: boolean): WireRates {
  const total = (part: 'nominal' | 'peak', bytes: keyof FrameBytes): number => {
    let bits = 0;
    for (const r of runs) bits += r.perSecond[part] * frameBytes(headerBytes(r) + r.media[part], tagged)[bytes] * 8;
    return Math.round(bits);
  };
  const load = (bytes: keyof FrameBytes): Load => ({ nominal: total('nominal', bytes), peak: total('peak', bytes) });
  return { payload, frame: load('withoutFcs'), frameWithFcs: load('withFcs'), line: load('line') };
}
