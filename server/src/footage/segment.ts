/** A file of a recording that has been looked into, and what is taken of it. */

import { type Piece, cutExactly, cutOnKeyframes, extentOf, needsFileBefore } from './cut.ts';
import type { ProbedFile } from './probed-file.ts';
import type { Break, Named, Placed, Timeline } from './timeline.ts';

export interface Segment extends Named {
  /** From the folder that the recordings lie in, with forward slashes. */
  readonly path: string;
  readonly media: ProbedFile;
  /** What is wrong with it, where it can be read in part only. */
  readonly damaged: string | undefined;
}

/** What is taken of a file, and when that was, in milliseconds since 1970. */
export interface TakenPiece<T extends Segment = Segment> {
  readonly segment: T;
  readonly piece: Piece;
  readonly frames: number;
  readonly from: number;
  readonly to: number;
}

export interface Asked {
  readonly from: number;
  readonly to: number;
  /** To the frame, with frames made anew at the edges; else on keyframes. */
  readonly exact: boolean;
}

/** Why an exact cut cannot be made, as a sentence. */
export interface NothingTaken {
  readonly impossible: string;
}

/** Less than half a millisecond, in seconds. */
const SAME = 0.0005;

/** Encoders of FFmpeg that make what the cameras make, by its name of the codec. */
const ENCODED = ['h264', 'hevc'];

/** All that was recorded of what is asked for, in its order. */
export function taken<T extends Segment>({ placed }: Timeline<T>, asked: Asked): TakenPiece<T>[] | NothingTaken {
  const wanted = placed.filter(({ start, end }) => start < asked.to && end > asked.from);
  const all: TakenPiece<T>[] = [];
  for (const { file, start } of wanted) {
    const { frames } = file.media;
    const [from, to] = [(asked.from - start) / 1000, (asked.to - start) / 1000];
    const pieces = asked.exact ? cutExactly(frames, from, to) : [cutOnKeyframes(frames, from, to)];
    const fault = pieces.some(({ kind }) => kind === 'encoded') ? unencodable(file) : undefined;
    if (fault !== undefined) return { impossible: fault };
    if (needsFileBefore(frames) && cutsOff(all.at(-1)?.piece, pieces[0]))
      return {
        impossible:
          `The first frames of ${file.path} cannot be decoded without the end of the file before (open groups of pictures), ` +
          'so that no cut to the frame is possible there. Ask without --exact, or let the encoder use closed groups.',
      };
    for (const piece of pieces) {
      const extent = extentOf(piece, frames);
      all.push({
        segment: file,
        piece,
        frames: extent.frames,
        from: start + extent.from * 1000,
        to: start + extent.to * 1000,
      });
    }
  }
  return all;
}

/** Whether a file's first frames are parted from the file before, as that or they themselves are encoded. */
function cutsOff(before: Piece | undefined, piece: Piece | undefined): boolean {
  return (
    piece !== undefined &&
    ((before?.kind === 'encoded' && piece.kind !== 'encoded') || (piece.kind === 'encoded' && piece.from < SAME))
  );
}

function unencodable({ path, media: { video } }: Segment): string | undefined {
  if (!ENCODED.includes(video.codec))
    return `${path} is ${video.codec}, which is not made anew: only H.264 and H.265 can be cut to the frame. Ask without --exact.`;
  if (video.interlaced)
    return `${path} is interlaced and cannot be cut to the frame without a loss. Ask without --exact.`;
  return undefined;
}

/** A hole in the frames of one file, where its source stopped: longer than that, in seconds, and than ten frames. */
const HOLE = 1;

/**
 * Every gap and overlap in what was asked for, in order of time; what lies before the first file and after the last
 * too.
 */
export function breaksOf<T extends Segment>({ placed, breaks }: Timeline<T>, { from, to }: Asked): Break[] {
  const wanted = placed.filter(({ start, end }) => start < to && end > from);
  const gap = (start: number, end: number): Break => ({ kind: 'gap', from: start, to: end });
  const edges =
    wanted.length === 0
      ? [gap(from, to)]
      : [gap(from, lowest(wanted.map(({ start }) => start))), gap(-lowest(wanted.map(({ end }) => -end)), to)];
  return [...breaks, ...wanted.flatMap(holes), ...edges]
    .map((one) => ({ ...one, from: Math.max(one.from, from), to: Math.min(one.to, to) }))
    .filter((one) => one.to - one.from > 0.5)
    .sort((a, b) => a.from - b.from);
}

function holes<T extends Segment>({ file, start }: Placed<T>): Break[] {
  const shown = [...file.media.frames].sort((a, b) => a.shown - b.shown);
  return shown.slice(1).flatMap((frame, index): Break[] => {
    const before = shown[index] ?? frame;
    const step = frame.shown - before.shown;
    if (step < HOLE || step < 10 * (file.media.length / shown.length)) return [];
    const usual = Math.min(before.duration, 0.1);
    return [{ kind: 'gap', from: start + (before.shown + usual) * 1000, to: start + frame.shown * 1000 }];
  });
}

function lowest(values: readonly number[]): number {
  return values.reduce((a, b) => Math.min(a, b), Infinity);
}
