/**
 * The arguments for FFmpeg, which is never started by a shell. It runs in a folder of its own, which holds the pieces,
 * the list and the result. Checked with FFmpeg 5.1; every option is in its manual.
 */

import { openedAs } from './declared-container.ts';
import { type Piece, extentOf } from './cut.ts';
import type { ProbedFile, VideoFormat } from './probed-file.ts';
import type { PlannedOutput } from './outputs.ts';
import type { TakenPiece } from './segment.ts';

/** A file with any name: the protocol in front keeps `-` and `:` from having a meaning. */
export function fileUrl(path: string): string {
  return `file:${path}`;
}

const QUIET = ['-hide_banner', '-nostdin', '-v', 'warning', '-y'];
const VIDEO_AND_AUDIO = ['-map', '0:V:0', '-map', '0:a?'];
/** Video and audio of a file opened twice. Not for transport streams: FFmpeg takes their start from the used streams. */
const EACH_FROM_ITS_OWN = ['-map', '0:V:0', '-map', '1:a?'];
/** Seconds to seek before a time, so that rounding loses no frame. */
const BEFORE = 0.001;

/** Whether the piece has to be written by itself before it is joined. */
export function needsOwnFile({ piece, segment }: TakenPiece, { setsInStream }: PlannedOutput, path: string): boolean {
  // The concat demuxer stops at a damaged file.
  if (piece.kind !== 'whole' || segment.damaged !== undefined) return true;
  // The list of the concat demuxer is read line by line, in quotes too.
  if (/[\r\n]/.test(path)) return true;
  return setsInStream && segment.media.video.codec === 'hevc' && !isTransport(segment.media);
}

/**
 * Writes the piece in the container of its file.
 *
 * @param path of the file, from the root of the disk
 * @param to the name of the piece
 */
export function pieceArguments(
  { piece, segment: { media } }: TakenPiece,
  { container, setsInStream }: PlannedOutput,
  path: string,
  to: string,
): string[] {
  // Here all pieces of H.265 get their own files. In transport streams each keeps its parameter sets; joined from other
  // containers into one, each would get those of the first.
  const own =
    container === 'mpegts' && setsInStream && media.video.codec === 'hevc' ? container : pieceContainer(media);
  const timescale = own === 'mov' ? media.video.timescale : undefined;
  const toStream =
    setsInStream && media.video.codec === 'hevc' && own !== 'mpegts' ? ['-bsf:v', 'hevc_mp4toannexb'] : [];
  return [
    ...QUIET,
    ...(piece.kind === 'encoded'
      ? encodedPiece(piece, media, path)
      : [...copiedPiece(piece, media, path), ...toStream]),
    ...(timescale === undefined ? [] : ['-video_track_timescale', timescale.toString()]),
    // A piece that starts before 0 would have its first frame hidden by an edit list.
    '-avoid_negative_ts',
    'make_zero',
    '-f',
    own,
    fileUrl(to),
  ];
}

/** Opens the file as the same container as when it was probed. */
function inputOf({ container }: ProbedFile, path: string): string[] {
  return [...openedAs(container), '-i', fileUrl(path)];
}

/** Copies from a keyframe on. FFmpeg decides where to begin and to end by the decoding times of packets. */
function copiedPiece(piece: Piece, media: ProbedFile, path: string): string[] {
  const input = inputOf(media, path);
  if (piece.kind !== 'copied') return [...input, ...VIDEO_AND_AUDIO, '-c', 'copy'];
  const { first, end } = piece;
  const begins = first === 0 ? 0 : Math.max(0, media.lead + decodedBefore(media, first));
  const start = first === 0 ? [] : ['-ss', seconds(begins)];
  const until = (time: number): string[] => (end === media.frames.length ? [] : ['-t', seconds(media.lead + time)]);
  const ends = decodedBefore(media, end);
  if (isTransport(media)) return [...input, ...VIDEO_AND_AUDIO, ...start, ...until(ends - begins), '-c', 'copy'];
  // The audio goes on until the last frame has been shown, which is later where frames are reordered.
  return [
    ...until(ends),
    ...input,
    ...until(extentOf(piece, media.frames).to),
    ...input,
    ...EACH_FROM_ITS_OWN,
    ...start,
    '-c',
    'copy',
  ];
}

/** A time between the decoding of the frame before and that of this one. */
function decodedBefore({ frames }: ProbedFile, index: number): number {
  return ((frames[index - 1]?.decoded ?? 0) + (frames[index]?.decoded ?? 0)) / 2;
}

/** Decodes from the keyframe before, and encodes the wanted frames with the settings of their file. */
function encodedPiece(piece: Piece & { kind: 'encoded' }, media: ProbedFile, path: string): string[] {
  const input = inputOf(media, path);
  // Audio before the first frame of a file continues that of the file before.
  const start = piece.from < BEFORE ? 0 : Math.max(0, media.lead + piece.from - BEFORE);
  const seek = start > 0 ? ['-ss', seconds(start)] : [];
  const until = (time: number): string[] => ['-t', seconds(Math.max(BEFORE, media.lead + time - start))];
  // Where copied frames follow, their audio begins when the first of them is decoded.
  const next = media.frames.findIndex(({ key, shown }) => key && Math.abs(shown - piece.to) < BEFORE);
  const audio = until(next > 0 ? decodedBefore(media, next) : piece.to);
  // Decoded time counts from the first wanted frame.
  const video = ['-t', seconds(piece.last - piece.from + 2 * BEFORE)];
  return [
    '-noautorotate',
    // A transport stream has no index: after a seek, decoding would start between two keyframes.
    ...(isTransport(media)
      ? [...input, ...VIDEO_AND_AUDIO, ...seek, ...video]
      : [...seek, ...video, ...input, ...seek, ...audio, ...input, ...EACH_FROM_ITS_OWN]),
    '-copypriorss:a',
    '0',
    '-c:a',
    'copy',
    ...encoderArguments(media.video),
    ...(isSteady(media) ? [] : ['-enc_time_base', '-1']),
    '-fps_mode',
    'passthrough',
  ];
}

const PROFILES: Readonly<Record<string, string>> = {
  'Constrained Baseline': 'baseline',
  'Baseline': 'baseline',
  'Main': 'main',
  'High': 'high',
  'High 10': 'high10',
  'High 4:2:2': 'high422',
  'High 4:4:4 Predictive': 'high444',
  'Main 10': 'main10',
};

/** Codec, profile, level, pixel format, colours and reordering of the original, with hardly any loss. */
function encoderArguments(video: VideoFormat): string[] {
  const { codec, profile, level, pixels, reordering, colour } = video;
  const name = PROFILES[profile ?? ''];
  const [back, pyramid] = [Math.min(reordering, 2) + (reordering > 1 ? 1 : 0), reordering > 1];
  const x264 = [
    '-c:v',
    'libx264',
    '-bf',
    back.toString(),
    '-x264-params',
    `b-pyramid=${pyramid ? 'normal' : 'none'}:open-gop=0`,
    ...(level === undefined || level <= 0 ? [] : ['-level:v', (level / 10).toString()]),
  ];
  const x265 = [
    '-c:v',
    'libx265',
    '-x265-params',
    `bframes=${back.toString()}:b-pyramid=${pyramid ? '1' : '0'}:open-gop=0:repeat-headers=1:log-level=error`,
  ];
  return [
    ...(codec === 'h264' ? x264 : x265),
    '-preset',
    'medium',
    '-crf',
    '16',
    '-pix_fmt',
    pixels,
    ...(name === undefined ? [] : ['-profile:v', name]),
    ...Object.entries(colour).flatMap(([key, value]) => [COLOUR_OPTIONS[key] ?? '', value]),
  ];
}

const COLOUR_OPTIONS: Readonly<Record<string, string>> = {
  color_range: '-color_range',
  color_space: '-colorspace',
  color_primaries: '-color_primaries',
  color_transfer: '-color_trc',
};

/** Whether all frames have the same duration, to about a millisecond. */
function isSteady({ frames, length }: ProbedFile): boolean {
  const usual = length / frames.length;
  const shown = frames.map((frame) => frame.shown).sort((a, b) => a - b);
  return shown.every((time, index) => Math.abs(time - index * usual) < 0.1 * usual);
}

/** Joins the files of the list into `to`. */
export function joinArguments({ pieces, container, setsInStream }: PlannedOutput, list: string, to: string): string[] {
  const media = pieces.map(({ segment }) => segment.media);
  const tags = new Set(media.map(({ video }) => video.tag));
  const [tag] = tags;
  const asIs = !setsInStream && !media.some(isTransport);
  return [
    ...QUIET,
    '-progress',
    'pipe:1',
    '-nostats',
    '-f',
    'concat',
    '-safe',
    '0',
    ...openedAs('concat'),
    ...(asIs ? ['-auto_convert', '0'] : []),
    '-i',
    fileUrl(list),
    ...VIDEO_AND_AUDIO,
    '-c',
    'copy',
    ...tagOf(container, media[0]?.video.codec, asIs && tags.size === 1 ? tag : undefined, setsInStream),
    '-metadata',
    `creation_time=${new Date(Math.round(pieces[0]?.from ?? 0)).toISOString()}`,
    '-f',
    container,
    fileUrl(to),
  ];
}

/** ISO/IEC 14496-15: avc1 and hvc1 have their parameter sets in the header alone, avc3 and hev1 in the stream too. */
function tagOf(container: string, codec: string | undefined, tag: string | undefined, setsInStream: boolean): string[] {
  if (container !== 'mp4' && container !== 'mov') return [];
  if (setsInStream && codec === 'h264') return ['-tag:v', 'avc3'];
  if (codec === 'hevc') return ['-tag:v', tag === 'hvc1' ? 'hvc1' : 'hev1'];
  return [];
}

export interface Listed {
  readonly path: string;
  /** The demuxers that may open it. */
  readonly container: string;
  /** Seconds from the container's start time to the first shown frame. */
  readonly lead: number;
  /** Seconds from its first frame to that of the next piece. */
  readonly span: number;
}

/**
 * The list of the concat demuxer. Each duration is set so that the first frame of the next file comes exactly at the
 * end of the last one of this file, wherever their containers start; rounding errors do not add up.
 */
export function concatList(listed: readonly Listed[]): string {
  const lines = ['ffconcat version 1.0'];
  let shown = listed[0]?.lead ?? 0;
  let start = 0;
  for (const [index, { path, container, span }] of listed.entries()) {
    lines.push(`file ${quoted(fileUrl(path))}`, `option format_whitelist ${container}`);
    shown += span;
    const next = Math.round((shown - (listed[index + 1]?.lead ?? 0)) * 1e6);
    lines.push(`duration ${((next - start) / 1e6).toFixed(6)}`);
    start = next;
  }
  return `${lines.join('\n')}\n`;
}

/** FFmpeg's manual of utilities, Quoting and escaping: within quotes only the quote is special. */
function quoted(text: string): string {
  return `'${text.replaceAll("'", String.raw`'\''`)}'`;
}

function pieceContainer({ container }: ProbedFile): string {
  if (container.startsWith('mov')) return 'mov';
  return container.startsWith('matroska') ? 'matroska' : (container.split(',')[0] ?? '');
}

function isTransport({ container }: ProbedFile): boolean {
  return container === 'mpegts';
}

function seconds(value: number): string {
  return value.toFixed(6);
}
