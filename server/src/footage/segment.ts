/** A probed file of a recording, and the pieces that are taken from it. */

import { type Piece, cutExactly, cutOnKeyframes, extentOf, needsFileBefore } from './cut.ts';
import type { ProbedFile } from './probed-file.ts';
import type { Break, NamedFile, PlacedSegment, Timeline } from './timeline.ts';

export interface Segment extends NamedFile {
  /** The path from the folder of the recordings, with forward slashes. */
  readonly path: string;
  readonly media: ProbedFile;
  /** The damage, where only a part of the file can be read. */
  readonly damaged: string | undefined;
}

/** A piece of a file, and its time, in milliseconds since 1970. */
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
  /** Whether to cut to the frame, with frames at the edges encoded again; else on keyframes. */
  readonly exact: boolean;
}

/** Why an exact cut cannot be made, as a sentence. */
export interface NothingTaken {
  readonly impossible: string;
}

/** Seconds; times that differ by less are equal. */
const SAME = 0.0005;

/** Codecs, by FFmpeg's names, that frames can be encoded in again. */
const ENCODED = ['h264', 'hevc'];

/** All recorded pieces of the requested time, in their order. */
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

/** Whether a file's first frames are cut off from the file before, as one of the two is encoded again. */
function cutsOff(before: Piece | undefined, piece: Piece | undefined): boolean {
  return (
    piece !== undefined &&
    ((before?.kind === 'encoded' && piece.kind !== 'encoded') || (piece.kind === 'encoded' && piece.from < SAME))
  );
}

function unencodable({ path, media: { video } }: Segment): string | undefined {
  if (!ENCODED.includes(video.codec))
    return `${path} is ${video.codec}, which cannot be encoded again: only H.264 and H.265 can be cut to the frame. Ask without --exact.`;
  if (video.interlaced)
    return `${path} is interlaced and cannot be cut to the frame without a loss. Ask without --exact.`;
  return undefined;
}

/** Seconds: a longer pause between frames of one file, of more than ten frames, is a gap: its source had stopped. */
const HOLE = 1;

/**
 * Every gap and overlap in the requested time, in order of time, those before the first file and after the last too.
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

function holes<T extends Segment>({ file, start }: PlacedSegment<T>): Break[] {
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
