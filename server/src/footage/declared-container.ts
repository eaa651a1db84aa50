/**
 * Limits what FFmpeg may open. It recognizes a format by the bytes of a file and not by its name, and some formats name
 * other files or addresses: playlists (HLS), lists (concat), session descriptions. So a file is opened only as the
 * container that its name declares, and only files are opened.
 */

/** FFmpeg's demuxers by the ending of a name: containers that hold their own pictures. */
const DEMUXERS: Readonly<Record<string, string>> = {
  'mp4': 'mov',
  'm4v': 'mov',
  'mov': 'mov',
  '3gp': 'mov',
  'mkv': 'matroska',
  'webm': 'matroska',
  'ts': 'mpegts',
  'mts': 'mpegts',
  'm2ts': 'mpegts',
  'avi': 'avi',
  'flv': 'flv',
  'mpg': 'mpeg',
  'mpeg': 'mpeg',
};

/** The demuxers for a name whose ending declares no container, and for pieces that FFmpeg has written itself. */
export const ANY_CONTAINER = [...new Set(Object.values(DEMUXERS))].join(',');

/** The demuxers, in FFmpeg's words, that may open a file of that name. */
export function declaredContainer(path: string): string {
  return DEMUXERS[endingOf(path).toLowerCase()] ?? ANY_CONTAINER;
}

function endingOf(path: string): string {
  return /\.([^./]+)$/.exec(path)?.[1] ?? '';
}

/** Options in front of an input (FFmpeg's manual of formats, Format Options, and of protocols). */
export function openedAs(container: string): string[] {
  return ['-protocol_whitelist', 'file', '-format_whitelist', container];
}

/** Why a file was not opened, as a clause; `undefined` where FFmpeg complains of something else. */
export function notOpened(complaints: string, path: string): string | undefined {
  const format = /^\[(\S+) @ [^\]]*\] Format not on whitelist/m.exec(complaints)?.[1];
  if (format === undefined) return undefined;
  const ending = endingOf(path);
  const declared = ending in DEMUXERS ? `not the container that .${ending} declares` : 'no container of recordings';
  return `by what is in it, it is ${declared}, but what FFmpeg calls ${format}: it is not opened, nor any file that it names`;
}
