/** Reads ffprobe's JSON about a stream. Values that are missing, or have an unexpected form, are `undefined`. */

import { Unreadable } from '../unreadable.ts';
import { isMapping } from '../../text/syntax.ts';

/** The command that makes such a file, for the user. A minute is enough, of a live stream or of a file. */
export const FFPROBE_COMMAND =
  'ffprobe -v error -rtsp_transport tcp -read_intervals %+60 -show_streams -show_format -show_packets -of json ' +
  'rtsp://192.168.20.31:554/ > gate.json';

export interface Packet {
  /** Presentation time and, where ffprobe gives it, decoding time, in seconds. */
  readonly shown: number | undefined;
  readonly decoded: number | undefined;
  readonly bytes: number;
  readonly key: boolean;
}

export interface ProbedPart {
  readonly kind: 'video' | 'audio';
  /** FFmpeg's name of the codec. */
  readonly codec: string | undefined;
  readonly width: number | undefined;
  readonly height: number | undefined;
  /** Pictures per second that the container or the codec gives. */
  readonly frameRate: number | undefined;
  /** bit/s that the container or the codec gives. */
  readonly bitRate: number | undefined;
  readonly sampleRate: number | undefined;
  readonly channels: number | undefined;
  readonly packets: readonly Packet[];
}

export interface Probed {
  /** The file or address that was probed. */
  readonly filename: string | undefined;
  readonly parts: readonly ProbedPart[];
}

type Json = Readonly<Record<string, unknown>>;

/** @throws Unreadable where it is no output of ffprobe */
export function readProbe(text: string): Probed {
  let read: unknown;
  try {
    read = JSON.parse(text.replace(/^\ufeff/, ''));
  } catch (error) {
    if (!(error instanceof SyntaxError)) throw error;
    throw new Unreadable(`it is not whole JSON. Take it so: ${FFPROBE_COMMAND}`);
  }
  const streams = isMapping(read) ? read['streams'] : undefined;
  if (!isMapping(read) || !Array.isArray(streams))
    throw new Unreadable(`it has no list of streams. Take it so: ${FFPROBE_COMMAND}`);
  const packets = packetsByStream(read);
  const format = read['format'];
  return {
    filename: isMapping(format) ? textOf(format['filename']) : undefined,
    parts: streams.flatMap((stream: unknown): ProbedPart[] => (isMapping(stream) ? partOf(stream, packets) : [])),
  };
}

function partOf(stream: Json, packets: ReadonlyMap<unknown, readonly Packet[]>): ProbedPart[] {
  const kind = stream['codec_type'];
  // A picture on a cover is no video.
  const disposition = stream['disposition'];
  if ((kind !== 'video' && kind !== 'audio') || (isMapping(disposition) && disposition['attached_pic'] === 1))
    return [];
  return [
    {
      kind,
      codec: textOf(stream['codec_name']),
      width: positive(stream['width']),
      height: positive(stream['height']),
      frameRate: rational(stream['avg_frame_rate']),
      bitRate: positive(stream['bit_rate']),
      sampleRate: positive(stream['sample_rate']),
      channels: positive(stream['channels']),
      packets: packets.get(stream['index']) ?? [],
    },
  ];
}

/** Packets, or else frames: ffprobe lists them separately or, where both were asked for, together. */
function packetsByStream(read: Json): Map<unknown, Packet[]> {
  const list = (key: string): readonly unknown[] => (Array.isArray(read[key]) ? (read[key] as readonly unknown[]) : []);
  const both = list('packets_and_frames');
  const typed = (type: string): readonly unknown[] => both.filter((each) => isMapping(each) && each['type'] === type);
  const packets =
    [list('packets'), typed('packet'), list('frames'), typed('frame')].find((each) => each.length > 0) ?? [];
  const found = new Map<unknown, Packet[]>();
  for (const packet of packets) {
    if (!isMapping(packet)) continue;
    const bytes = number(packet['size'] ?? packet['pkt_size']);
    if (bytes === undefined) continue;
    const own = found.get(packet['stream_index']) ?? [];
    found.set(packet['stream_index'], own);
    own.push({
      shown: number(packet['pts_time'] ?? packet['best_effort_timestamp_time']),
      decoded: number(packet['dts_time'] ?? packet['pkt_dts_time']),
      bytes,
      key: packet['key_frame'] === 1 || (typeof packet['flags'] === 'string' && packet['flags'].startsWith('K')),
    });
  }
  return found;
}

function textOf(value: unknown): string | undefined {
  return typeof value === 'string' && value !== '' ? value : undefined;
}

/** ffprobe writes a number as a number or as text, and N/A where it has none. */
function number(value: unknown): number | undefined {
  const read =
    typeof value === 'number'
      ? value
      : typeof value === 'string' && /^-?\d+(\.\d+)?$/.test(value)
        ? Number(value)
        : NaN;
  return Number.isFinite(read) ? read : undefined;
}

function positive(value: unknown): number | undefined {
  const read = number(value);
  return read !== undefined && read > 0 ? read : undefined;
}

/** `30000/1001`; 0/0 is none. */
function rational(value: unknown): number | undefined {
  const match = typeof value === 'string' ? /^(\d{1,12})\/(\d{1,12})$/.exec(value) : null;
  return match === null ? undefined : positive(Number(match[1]) / Number(match[2]));
}
