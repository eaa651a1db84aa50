/** Streams, and what else hosts send each other. */

import type { Fact } from './fact.ts';

export type Transport = 'rtsp' | 'rtsp-udp' | 'rtp' | 'ts-udp' | 'ts-rtp';

/** Whether each receiver asks the source for the stream by RTSP, over TCP or UDP. */
export function isRtsp(transport: string | undefined): boolean {
  return transport === 'rtsp' || transport === 'rtsp-udp';
}

/** bit/s; the peak is the nominal rate where none is declared. */
export interface MediaRate {
  readonly nominal: number;
  readonly peak: number;
  readonly peakDeclared: boolean;
}

export interface Video {
  readonly codec: string | undefined;
  readonly width: number | undefined;
  readonly height: number | undefined;
  readonly frameRate: number | undefined;
  readonly rate: MediaRate | undefined;
  /** Milliseconds. */
  readonly keyframeInterval: number | undefined;
}

export interface Audio {
  readonly codec: string | undefined;
  readonly rate: MediaRate | undefined;
  /** Samples per second. */
  readonly sampleRate: number | undefined;
  readonly channels: number | undefined;
}

export interface Stream extends Fact {
  readonly source: string | undefined;
  readonly carries: string | undefined;
  /** What of television it sends: a programme, or a whole multiplex. */
  readonly service: string | undefined;
  readonly multiplex: string | undefined;
  readonly transport: Transport | undefined;
  readonly port: number | undefined;
  /** What follows the port in an RTSP address. */
  readonly path: string | undefined;
  /** Names a file of user and password on the host that asks for the stream. */
  readonly credentials: string | undefined;
  readonly group: number | undefined;
  readonly ttl: number;
  /** As declared here; `Site.media` adds what is carried over from another stream. */
  readonly video: Video | undefined;
  readonly audio: Audio | undefined;
  readonly receivers: readonly string[];
  /** Bytes of media in a packet. */
  readonly packetSize: number | undefined;
  /** bit/s of the whole transport stream, padding included. */
  readonly muxRate: number | undefined;
  readonly egress: string | undefined;
}

/** What a stream consists of, including what it carries from another. */
export interface Media {
  readonly video: Video | undefined;
  readonly audio: Audio | undefined;
  /** The rate of what comes from the air unchanged: a programme with its tables, or a whole multiplex. */
  readonly broadcast: MediaRate | undefined;
}

/** What else two devices send each other; rates of the data in bit/s. */
export interface Traffic extends Fact {
  readonly from: string | undefined;
  readonly to: string | undefined;
  /** From `from` to `to`. */
  readonly rate: number | undefined;
  readonly back: number | undefined;
}
