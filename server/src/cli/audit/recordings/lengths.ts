/** The true lengths of files, by ffprobe. */

import { join } from 'node:path';
import type { ReadVolume } from '../../../audit/recordings/audit.ts';
import type { Lengths } from '../../../audit/recordings/course.ts';
import { type Looked, lookedAt } from '../../../audit/recordings/looked.ts';
import { mediaLength } from '../../../machine/media-length.ts';
import { progress, progressDone } from '../../progress.ts';

/** How many ffprobe processes run at once. */
const AT_ONCE = 4;

interface Wanted {
  readonly recording: string;
  readonly start: number;
  readonly path: string;
}

/**
 * The lengths of doubtful files first, then of others that lie far apart. The newest file of each recording is left
 * out, as it may still be written to.
 *
 * @param most files that are looked into, of all recordings together
 * @throws CannotDo where ffprobe is not on this machine
 */
export async function lengthsOf(
  volumes: readonly (ReadVolume & { readonly root: string })[],
  now: number,
  most: number,
): Promise<Map<string, Lengths>> {
  const looked = volumes.flatMap(({ root, survey }) => lookedAt(survey, now).map((one) => ({ root, one })));
  const each = Math.ceil(most / Math.max(1, looked.length));
  const wanted = looked.flatMap(({ root, one }) => wantedOf(root, one, each));
  const lengths = new Map<string, Map<number, number | 'damaged'>>();
  let next = 0;
  const work = async (): Promise<void> => {
    for (let index = next++; index < wanted.length; index = next++) {
      const file = wanted[index];
      if (file === undefined) continue;
      progress(`looking into files, ${(index + 1).toString()} of ${wanted.length.toString()}`);
      const length = await mediaLength(file.path);
      const own = lengths.get(file.recording) ?? new Map<number, number | 'damaged'>();
      if (length !== undefined) own.set(file.start, length);
      lengths.set(file.recording, own);
    }
  };
  await Promise.all(Array.from({ length: AT_ONCE }, work));
  progressDone();
  return lengths;
}

function wantedOf(root: string, { recording: { name }, rows, course, ...looked }: Looked, most: number): Wanted[] {
  const rowsWanted = new Set<number>();
  const last = course.end - 1;
  for (const start of course.doubtful) if (rowsWanted.size < most) rowsWanted.add(rows.before(start));
  const others = Math.min(last - course.first, most - rowsWanted.size);
  for (let other = 0; other < others; other++)
    rowsWanted.add(course.first + Math.floor((other * (last - course.first)) / others));
  return [...rowsWanted]
    .filter((index) => index >= course.first && index < last && rows.size(index) > 0)
    .map((index) => ({ recording: name, start: rows.start(index), path: join(root, looked.path(index)) }));
}
