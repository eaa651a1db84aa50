/** Where the site does not say how far keyframes lie apart, in milliseconds: beyond that a screen is dark for too long. */
const USUAL_KEYFRAMES = 5000;

/**
 * How much of a stream a recorder may read before it knows what it is, in milliseconds: up to a keyframe, and a second.
 * It opens its first file then, and names it by that time, but writes what it has read as well: the first file begins
 * before its name. Measured with FFmpeg 5.1: six pictures over RTSP, so 0.3 s of 20 a second and 1.2 s of 5.
 */
export function backlogOf(keyframeInterval: number | undefined): number {
  return (keyframeInterval ?? USUAL_KEYFRAMES) + 1000;
}
