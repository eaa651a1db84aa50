/** The output of ffprobe for a file of a recording, in the shape that choosing and joining need. */

/** A packet of video in the file: a frame. Times are in seconds from the first shown frame. */
export interface Frame {
  readonly shown: number;
  readonly decoded: number;
  readonly duration: number;
  readonly key: boolean;
}

export interface ProbedFile {
  /** FFmpeg's name of the container: `mov,mp4,m4a,3gp,3g2,mj2`. */
  readonly container: string;
  readonly video: VideoFormat;
  readonly audio: readonly AudioFormat[];
  /** The kinds of other streams, which are left out. */
  readonly others: readonly string[];
  /** In the order in which they are decoded. Never empty. */
  readonly frames: readonly Frame[];
  /** Seconds from the container's start time to the first shown frame. */
  readonly lead: number;
  /** Length from the first frame to the end of the last, in seconds. */
  readonly length: number;
}

export interface VideoFormat {
  readonly codec: string;
  readonly tag: string;
  readonly profile: string | undefined;
  readonly level: number | undefined;
  readonly width: number;
  readonly height: number;
  readonly pixels: string;
  readonly aspect: string;
  /** How many frames the decoder has to hold back. */
  readonly reordering: number;
  readonly interlaced: boolean;
  /** Ticks a second, where that is a whole number. */
  readonly timescale: number | undefined;
  readonly colour: Readonly<Record<string, string>>;
  /** A hash of the parameter sets that the container holds. */
  readonly parameters: string;
}

export interface AudioFormat {
  readonly codec: string;
  readonly sampleRate: number;
  readonly channels: number;
}

/** The arguments that make ffprobe print what `mediaOf` reads, as JSON. */
export const PROBE_ARGUMENTS: readonly string[] = [
  '-v',
  'error',
  '-of',
  'json',
  '-show_data_hash',
  'sha256',
  '-show_entries',
  'format=format_name,start_time:stream=index,codec_type,codec_name,codec_tag_string,profile,level,width,height,pix_fmt,' +
    'sample_aspect_ratio,has_b_frames,field_order,time_base,color_range,color_space,color_primaries,color_transfer,' +
    'sample_rate,channels,extradata_hash:stream_disposition=attached_pic:packet=stream_index,pts_time,dts_time,duration_time,flags',
];

type Json = Readonly<Record<string, unknown>>;

/** @returns what is wrong with the file, where nothing can be taken from it */
export function mediaOf(probed: unknown): ProbedFile | { readonly unusable: string } {
  const { format, streams, packets } = probed as {
    format?: Json;
    streams?: readonly Json[];
    packets?: readonly Json[];
  };
  const isPicture = (stream: Json): boolean => (stream['disposition'] as Json | undefined)?.['attached_pic'] === 1;
  const real = (streams ?? []).filter((stream) => !isPicture(stream));
  const video = real.find((stream) => stream['codec_type'] === 'video');
  if (format === undefined || video === undefined) return { unusable: 'there is no video in it' };
  const read = (packets ?? []).filter((packet) => packet['stream_index'] === video['index']).map(frameOf);
  if (read.length === 0) return { unusable: 'there is not one whole frame in it' };
  if (read.some(({ shown }) => Number.isNaN(shown))) return { unusable: 'its frames have no times' };
  const first = least(read.map(({ shown }) => shown));
  const usual = usualDuration(read);
  const frames = read.map(({ shown, decoded, duration, key }) => ({
    shown: shown - first,
    decoded: (Number.isNaN(decoded) ? shown : decoded) - first,
    duration: duration > 0 ? duration : usual,
    key,
  }));
  return {
    container: text(format, 'format_name'),
    video: videoOf(video),
    audio: real.filter((stream) => stream['codec_type'] === 'audio').map(audioOf),
    others: real.map((stream) => text(stream, 'codec_type')).filter((kind) => kind !== 'video' && kind !== 'audio'),
    frames,
    lead: first - (number(format, 'start_time') ?? first),
    length: frames.reduce((end, { shown, duration }) => Math.max(end, shown + duration), 0),
  };
}

function frameOf(packet: Json): Frame {
  return {
    shown: number(packet, 'pts_time') ?? number(packet, 'dts_time') ?? NaN,
    decoded: number(packet, 'dts_time') ?? NaN,
    duration: number(packet, 'duration_time') ?? 0,
    key: text(packet, 'flags').startsWith('K'),
  };
}

function videoOf(stream: Json): VideoFormat {
  const [ticks, seconds] = text(stream, 'time_base').split('/').map(Number);
  const colour = ['color_range', 'color_space', 'color_primaries', 'color_transfer']
    .map((key) => [key, text(stream, key)] as const)
    .filter(([, value]) => value !== '' && value !== 'unknown');
  return {
    codec: text(stream, 'codec_name'),
    tag: text(stream, 'codec_tag_string'),
    profile: text(stream, 'profile') || undefined,
    level: number(stream, 'level'),
    width: number(stream, 'width') ?? 0,
    height: number(stream, 'height') ?? 0,
    pixels: text(stream, 'pix_fmt'),
    aspect: text(stream, 'sample_aspect_ratio') || '1:1',
    reordering: number(stream, 'has_b_frames') ?? 0,
    interlaced: !['', 'unknown', 'progressive'].includes(text(stream, 'field_order')),
    timescale: ticks === 1 ? seconds : undefined,
    colour: Object.fromEntries(colour),
    parameters: text(stream, 'extradata_hash'),
  };
}

function audioOf(stream: Json): AudioFormat {
  return {
    codec: text(stream, 'codec_name'),
    sampleRate: number(stream, 'sample_rate') ?? 0,
    channels: number(stream, 'channels') ?? 0,
  };
}

/** The median time between frames: the duration of frames that have none. */
function usualDuration(frames: readonly Frame[]): number {
  const shown = frames.map((frame) => frame.shown).sort((a, b) => a - b);
  const steps = shown
    .slice(1)
    .map((time, index) => time - (shown[index] ?? 0))
    .sort((a, b) => a - b);
  return steps[Math.floor(steps.length / 2)] ?? 0.04;
}

/** The minimum of any number of values; Math.min takes only about a hundred thousand. */
function least(values: readonly number[]): number {
  return values.reduce((a, b) => Math.min(a, b), Infinity);
}

function text(of: Json, key: string): string {
  const value = of[key];
  return typeof value === 'string' ? value : '';
}

function number(of: Json, key: string): number | undefined {
  const value = of[key];
  if (typeof value !== 'number' && typeof value !== 'string') return undefined;
  const read = Number(value);
  return Number.isFinite(read) ? read : undefined;
}
