/** How long the pictures or the sound in a file last, by ffprobe. */

import { declaredContainer, openedAs } from '../footage/declared-container.ts';
import { fileUrl } from '../footage/ffmpeg-arguments.ts';
import { run } from './ffmpeg.ts';

/** Seconds; packets further apart than that belong to a stream that was begun again (common practice, no source). */
const JUMP = 10;

/**
 * Milliseconds; `undefined` where the file has gone, or holds no packet.
 *
 * A transport stream has no length of its own: ffprobe reports the span from its first timestamp to its last, which is
 * wrong where the stream was restarted. Nor has a Matroska file whose recorder was killed. Their packets are counted.
 */
export async function mediaLength(path: string): Promise<number | 'damaged' | undefined> {
  const probed = await run('ffprobe', probing(path, 'format=duration'));
  if (probed.status !== 0) return probed.err.includes('No such file') ? undefined : 'damaged';
  const seconds = Number(probed.out.trim());
  const isTold = Number.isFinite(seconds) && seconds > 0 && declaredContainer(path) !== 'mpegts';
  return isTold ? seconds * 1000 : countedLength(path);
}

function probing(path: string, entries: string): string[] {
  const opened = [...openedAs(declaredContainer(path)), '-i', fileUrl(path)];
  return ['-v', 'error', '-of', 'csv=p=0', '-show_entries', entries, ...opened];
}

/** The times between the packets of its first stream. */
async function countedLength(path: string): Promise<number | undefined> {
  let first: string | undefined;
  let before: number | undefined;
  let usual = 0;
  let sum = 0;
  const line = (text: string): void => {
    const [stream = '', time = ''] = text.trim().split(',');
    const at = Number(time);
    if (stream === '' || time === '' || !Number.isFinite(at) || (first ??= stream) !== stream) return;
    const step = before === undefined ? 0 : at - before;
    if (step > 0 && step <= JUMP) usual = step;
    if (before !== undefined) sum += step > 0 && step <= JUMP ? step : usual;
    before = at;
  };
  await run('ffprobe', probing(path, 'packet=stream_index,dts_time'), { line });
  return before === undefined ? undefined : Math.round((sum + usual) * 1000);
}
