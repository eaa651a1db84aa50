/** A film with a known rate and known keyframes, for cameras to send. */

import { rateOfVideo } from './cameras.ts';
import { run } from './run.ts';

export interface ClipWishes {
  readonly seconds: number;
  readonly frameRate: number;
  /** Seconds between keyframes. */
  readonly keyframeEvery: number;
  /** bit/s that the encoder aims at. */
  readonly videoRate: number;
  /** Sound as G.711 A-law, 64 kb/s. */
  readonly sound: boolean;
}

/** @returns the bit/s of its video */
export async function makeClip(
  path: string,
  { seconds, frameRate, keyframeEvery, videoRate, sound }: ClipWishes,
): Promise<number> {
  const every = String(keyframeEvery * frameRate);
  await run('ffmpeg', [
    '-loglevel',
    'error',
    '-f',
    'lavfi',
    '-i',
    `testsrc2=size=320x180:rate=${frameRate},noise=alls=20:allf=t`,
    ...(sound ? ['-f', 'lavfi', '-i', 'sine=frequency=440:sample_rate=8000', '-c:a', 'pcm_alaw', '-ac', '1'] : []),
    '-c:v',
    'libx264',
    '-preset',
    'ultrafast',
    '-bf',
    '0',
    '-g',
    every,
    '-keyint_min',
    every,
    '-sc_threshold',
    '0',
    '-b:v',
    String(videoRate),
    '-maxrate',
    String(videoRate),
    '-bufsize',
    String(videoRate / 2),
    '-pix_fmt',
    'yuv420p',
    '-t',
    String(seconds),
    path,
  ]);
  return rateOfVideo(path, seconds);
}

/** Writes a film that plays another one so many times. */
export async function repeat(once: string, times: number, path: string): Promise<void> {
  const input = ['-stream_loop', String(times - 1), '-i', once];
  await run('ffmpeg', ['-nostdin', '-loglevel', 'error', ...input, '-map', '0', '-c', 'copy', path]);
}
