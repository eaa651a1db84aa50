// What has been recorded: whether it plays, and whether it is what it was.
import assert from 'node:assert/strict';
import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { run } from '../lab/run.ts';

/** How many pictures each file has, all of which decode, from a keyframe on. */
export async function framesOf(paths: readonly string[]): Promise<number[]> {
  const counts: number[] = [];
  for (const path of paths) {
    const frames = await run('ffprobe', [
      '-v',
      'error',
      '-select_streams',
      'v',
      '-show_entries',
      'packet=flags',
      '-of',
      'csv=p=0',
      `file:${path}`,
    ]);
    const pictures = await run('ffmpeg', [
      '-nostdin',
      '-v',
      'error',
      '-xerror',
      '-i',
      `file:${path}`,
      '-map',
      '0:v',
      '-fps_mode',
      'passthrough',
      '-f',
      'framecrc',
      '-',
    ]);
    const flags = frames.trim().split('\n');
    assert.match(flags[0] ?? '', /^K/, path);
    const count = pictures.split('\n').filter((line) => line.startsWith('0,')).length;
    assert.equal(count, flags.length, path);
    counts.push(count);
  }
  return counts;
}

export function hashOf(path: string): string {
  return createHash('sha256').update(readFileSync(path)).digest('hex');
}
