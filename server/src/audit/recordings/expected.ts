/** The planned lengths of a recording's files, in milliseconds. */

import { backlogOf } from '../../recordings/keyframes.ts';
import type { FileNames } from '../../recordings/file-names.ts';
import type { Recording } from '../../site/model.ts';

export interface Expected {
  readonly least: number;
  /** On average. */
  readonly usual: number;
  readonly most: number;
  /** How much longer the first file of a recorder may be. */
  readonly backlog: number;
}

/** Milliseconds by which names and lengths may differ, as packets arrive unevenly (common practice, no source). */
const JITTER = 500;

/** The keyframe interval where the site declares none (common practice, no source). */
const KEYFRAMES = 10_000;

/** How far the time between two names may be off; `undefined` where names have no time of day. */
export function roundingOf({ roundedTo, noInstant }: FileNames): number | undefined {
  return noInstant !== undefined || roundedTo === undefined ? undefined : roundedTo + JITTER;
}

/**
 * A file ends at the first keyframe at or after its time, so it lasts a multiple of the keyframe interval. Where that
 * divides the length asked for, the camera's clock and the recorder's decide whether a keyframe comes just before or
 * just after: now and then one is an interval longer or shorter.
 *
 * Source: FFmpeg's segment muxer, measured: 4 s asked for are 4 4 4 with a keyframe each 2 s, 6 3 3 with 3 s.
 *
 * @returns undefined where the plan has no segments
 */
export function expectedOf({ segment }: Recording, keyframeInterval: number | undefined): Expected | undefined {
  if (segment === undefined || segment <= 0) return undefined;
  const every = keyframeInterval ?? Math.min(KEYFRAMES, segment);
  const backlog = backlogOf(keyframeInterval);
  if (every <= 0) return { ...around(segment, 0), backlog };
  const [shorter, longer] = [Math.max(1, Math.floor(segment / every)) * every, Math.ceil(segment / every) * every];
  if (shorter === longer) return { ...around(longer, every), backlog };
  return { least: shorter, usual: segment, most: longer, backlog };
}

/** Up to `step` more or less, but never so much that a missing file would pass unseen. */
export function around(usual: number, step: number): Omit<Expected, 'backlog'> {
  const slack = Math.min(step, usual / 2);
  return { least: usual - slack, usual, most: usual + slack };
}
