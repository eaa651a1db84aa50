// What has been recorded: whether it plays.
import assert from 'node:assert/strict';
import { run } from '../lab/run.ts';

/** What plays: a file that was being written when the camera was unplugged may end in half a picture. */
export interface Played {
  readonly path: string;
  /** As many as were written. */
  readonly pictures: number;
  /** What FFmpeg says of pictures that do not decode. */
  readonly broken: string | undefined;
}

const HALF = 2;

/** Plays each file from its first picture on, which is a keyframe. */
export async function played(paths: readonly string[]): Promise<Played[]> {
  const found: Played[] = [];
  for (const path of paths) {
    const entries = ['-select_streams', 'v', '-show_entries', 'packet=flags', '-of', 'csv=p=0'];
    const flags = (await run('ffprobe', ['-v', 'error', ...entries, `file:${path}`])).trim().split('\n');
    assert.match(flags[0] ?? '', /^K/, path);
    let broken: string | undefined;
    const strictly = await decoded(path, ['-xerror']).catch((error: unknown) => {
      broken = String(error);
      return undefined;
    });
    const pictures = strictly ?? (await decoded(path, []));
    if (broken === undefined) assert.equal(pictures, flags.length, path);
    else assert.ok(pictures >= flags.length - HALF, `${path}: ${pictures} of ${flags.length}; ${broken}`);
    found.push({ path, pictures, broken });
  }
  return found;
}

async function decoded(path: string, how: readonly string[]): Promise<number> {
  const into = ['-map', '0:v', '-fps_mode', 'passthrough', '-f', 'framecrc', '-'];
  const lines = await run('ffmpeg', ['-nostdin', '-v', 'error', ...how, '-i', `file:${path}`, ...into]);
  return lines.split('\n').filter((line) => line.startsWith('0,')).length;
}
