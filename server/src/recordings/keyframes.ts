/** The interval between the keyframes of a recording, and its consequences. */

import type { Recording, Site } from '../site/model.ts';

/** Milliseconds; `undefined` where undeclared. */
export function keyframeIntervalOf(site: Site, { stream: name }: Recording): number | undefined {
  const stream = name === undefined ? undefined : site.streamByName.get(name);
  return stream === undefined ? undefined : site.media(stream).video?.keyframeInterval;
}

/** Milliseconds between keyframes where undeclared; with more, a screen stays dark for too long. */
const DEFAULT_INTERVAL = 5000;

/**
 * How much of a stream a recorder may read before it knows what it is, in milliseconds: up to a keyframe, and a second.
 * It then opens its first file and names it by that time, but writes what it has read as well: the first file starts
 * before its name says. Measured with FFmpeg 5.1: six pictures over RTSP, so 0.3 s of 20 a second and 1.2 s of 5.
 */
export function backlogOf(keyframeInterval: number | undefined): number {
  return (keyframeInterval ?? DEFAULT_INTERVAL) + 1000;
}
