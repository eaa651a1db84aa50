/** FFmpeg's names of the codecs of the site language (its codec descriptors, as `ffmpeg -codecs` lists them). */

const NAMES: ReadonlyMap<string, string> = new Map([
  ['h264', 'h264'],
  ['hevc', 'h265'],
  ['mpeg2video', 'mpeg2'],
  ['mjpeg', 'mjpeg'],
  ['av1', 'av1'],
  ['vp9', 'vp9'],
  ['pcm_alaw', 'pcma'],
  ['pcm_mulaw', 'pcmu'],
  ['adpcm_g722', 'g722'],
  ['aac', 'aac'],
  ['opus', 'opus'],
  ['mp2', 'mp2'],
  ['ac3', 'ac3'],
  // RFC 3551 §4.5.11 sends the high byte first; a file may keep it either way.
  ['pcm_s16be', 'l16'],
  ['pcm_s16le', 'l16'],
]);

/** The word of the site language; `undefined` where it has none. */
export function codecWord(ffmpeg: string): string | undefined {
  return NAMES.get(ffmpeg);
}
