/** Where to cut a file: on keyframes without changing a frame, or exactly, with frames at the edges encoded again. */

import type { Frame } from './probed-file.ts';

/**
 * Frames by their place in the order of decoding, `end` not included; or frames that are encoded, shown from `from` to
 * `to`, the last of them at `last`, in seconds.
 */
export type Piece =
  | { readonly kind: 'whole' }
  | { readonly kind: 'copied'; readonly first: number; readonly end: number }
  | {
      readonly kind: 'encoded';
      readonly frames: number;
      readonly from: number;
      readonly last: number;
      readonly to: number;
    };

/** Seconds: requested times are in milliseconds, so times that differ by less than half of one are equal. */
const SAME = 0.0005;

/**
 * From the last keyframe shown at or before `from`, to the first keyframe after the last wanted frame. The result
 * contains all that was requested.
 *
 * @param from seconds from the file's first frame; may be before it, as `to` may be after the file's end
 */
export function cutOnKeyframes(frames: readonly Frame[], from: number, to: number): Piece {
  const earliest = earliestFrom(frames);
  let first = 0;
  for (const [index, { key, shown }] of frames.entries()) if (key && shown <= from + SAME) first = index;
  const end = frames.findIndex(({ key }, index) => index > first && key && (earliest[index] ?? 0) >= to - SAME);
  return copied(frames, first, end === -1 ? frames.length : end);
}

/** The frames shown from `from` on and before `to`, and no others; only those up to a keyframe are encoded again. */
export function cutExactly(frames: readonly Frame[], from: number, to: number): Piece[] {
  const wanted = (shown: number): boolean => shown >= from - SAME && shown < to - SAME;
  const earliest = earliestFrom(frames);
  // No later frame in the file is shown before it, so none needs the frames before it.
  const clean = (index: number): boolean =>
    frames[index]?.key === true && (earliest[index] ?? 0) >= frames[index].shown - SAME;
  const first = frames.findIndex(({ shown }, index) => wanted(shown) && clean(index));
  const shown = frames.filter((frame) => wanted(frame.shown)).sort((a, b) => a.shown - b.shown);
  if (first === -1) return encoded(shown);
  let latest = -Infinity;
  let end = first;
  for (let index = first; index < frames.length; index += 1) {
    latest = Math.max(latest, frames[index]?.shown ?? 0);
    if (latest >= to - SAME) break;
    if (index + 1 === frames.length || frames[index + 1]?.key === true) end = index + 1;
  }
  if (end === first) return encoded(shown);
  const begins = frames[first]?.shown ?? 0;
  const ends = earliest[end] ?? Infinity;
  return [
    ...encoded(shown.filter((frame) => frame.shown < begins - SAME)),
    copied(frames, first, end),
    ...encoded(shown.filter((frame) => frame.shown >= ends - SAME)),
  ];
}

/** Whether the file's first frames are shown before its first keyframe: they need the file before. */
export function needsFileBefore(frames: readonly Frame[]): boolean {
  return (earliestFrom(frames)[0] ?? 0) < (frames[0]?.shown ?? 0) - SAME;
}

function copied(frames: readonly Frame[], first: number, end: number): Piece {
  return first === 0 && end === frames.length ? { kind: 'whole' } : { kind: 'copied', first, end };
}

function encoded(shown: readonly Frame[]): Piece[] {
  const [first, last] = [shown[0], shown.at(-1)];
  if (first === undefined || last === undefined) return [];
  return [
    { kind: 'encoded', frames: shown.length, from: first.shown, last: last.shown, to: last.shown + last.duration },
  ];
}

/** For each frame, the earliest time at which it or a later frame in the file is shown. */
function earliestFrom(frames: readonly Frame[]): number[] {
  const earliest = frames.map(() => Infinity);
  let least = Infinity;
  for (let index = frames.length - 1; index >= 0; index -= 1) {
    least = Math.min(least, frames[index]?.shown ?? Infinity);
    earliest[index] = least;
  }
  return earliest;
}

/** The number of frames of the piece, and the span in which they are shown, in seconds from the file's first frame. */
export function extentOf(piece: Piece, frames: readonly Frame[]): { frames: number; from: number; to: number } {
  if (piece.kind === 'encoded') return piece;
  const taken = piece.kind === 'whole' ? frames : frames.slice(piece.first, piece.end);
  return {
    frames: taken.length,
    from: taken.reduce((from, { shown }) => Math.min(from, shown), Infinity),
    to: taken.reduce((to, { shown, duration }) => Math.max(to, shown + duration), 0),
  };
}
