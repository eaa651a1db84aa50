/** Which pieces go into one file: those that a container can hold in one stream without encoding them again. */

import type { Segment, TakenPiece } from './segment.ts';

/** The containers that footage is written to, by the ending of the file's name; FFmpeg's names of them. */
export const CONTAINERS: Readonly<Record<string, string>> = { mp4: 'mp4', mov: 'mov', mkv: 'matroska', ts: 'mpegts' };

export interface PlannedOutput<T extends Segment = Segment> {
  readonly pieces: readonly TakenPiece<T>[];
  readonly container: string;
  /**
   * Whether the parameter sets change within the file, so that the stream must repeat them before each keyframe.
   */
  readonly setsInStream: boolean;
}

/** Runs of pieces that are alike, in their order. */
export function outputsOf<T extends Segment>(pieces: readonly TakenPiece<T>[], container: string): PlannedOutput<T>[] {
  const runs: TakenPiece<T>[][] = [];
  for (const piece of pieces) {
    const run = runs.at(-1);
    if (run?.[0] !== undefined && likeness(run[0].segment, container) === likeness(piece.segment, container))
      run.push(piece);
    else runs.push([piece]);
  }
  return runs.map((run) => {
    const sets = new Set(run.map(({ segment }) => segment.media.video.parameters));
    return { pieces: run, container, setsInStream: sets.size > 1 || run.some(({ piece }) => piece.kind === 'encoded') };
  });
}

/** `gate.mp4`, or `gate-1.mp4`, `gate-2.mp4` where there are several. */
export function nameOf(out: string, index: number, count: number): string {
  if (count === 1) return out;
  const dot = out.lastIndexOf('.');
  const number = (index + 1).toString().padStart(count.toString().length, '0');
  return `${out.slice(0, dot)}-${number}${out.slice(dot)}`;
}

/** `H.264 1920 × 1080, aac`: what the pieces of one file have in common, in words. */
export function formatWords({ media: { video, audio } }: Segment): string {
  const sound = audio.length === 0 ? 'no audio' : audio.map(({ codec }) => codec).join(' and ');
  return `${video.codec} ${video.width.toString()} × ${video.height.toString()}, ${sound}`;
}

/** A transport stream brings its parameter sets along, so that size and profile may change in it (ISO/IEC 13818-1). */
function likeness({ media: { video, audio, container } }: Segment, into: string): string {
  const picture = [video.width, video.height, video.pixels, video.aspect, video.timescale];
  const inTransport = into === 'mpegts' && ['h264', 'hevc'].includes(video.codec);
  return JSON.stringify([container, video.codec, inTransport ? [] : picture, audio]);
}
