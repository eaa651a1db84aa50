/** Probes the candidate files, each once. */

import { bytes } from '../text/words.ts';
import { type CandidateFile, type Pass, passOf } from './candidates.ts';
import { declaredContainer, notOpened, openedAs } from './declared-container.ts';
import { fileUrl } from './ffmpeg-arguments.ts';
import { type ProbedFile, PROBE_ARGUMENTS, mediaOf } from './probed-file.ts';
import type { Segment } from './segment.ts';
import type { LeftOut } from './sidecar.ts';
import type { FootageTools } from './tools.ts';

/** A file and the path that it is read from: that of a copy, where it may still be growing. */
export interface SegmentFile extends Segment {
  readonly original: string;
  readonly file: string;
  readonly size: number;
  /** The stamp of the original before it was read. */
  readonly stamp: string;
}

/** A recorder writes to its file at least once in so many milliseconds. */
const STILL = 15_000;
/** How many ffprobe processes run at once. */
const AT_ONCE = 4;

export interface Where {
  readonly root: string;
  readonly pass: Pass | undefined;
  /** The file that the recorder opened last. */
  readonly newest: string | undefined;
}

/** The probed files in the order of their names, and those that cannot be used. */
export async function lookInto(
  candidates: readonly CandidateFile[],
  where: Where,
  tools: FootageTools,
): Promise<{ segments: SegmentFile[]; leftOut: LeftOut[] }> {
  const looked: (SegmentFile | LeftOut)[] = [];
  let next = 0;
  let done = 0;
  const work = async (): Promise<void> => {
    for (let index = next++; index < candidates.length; index = next++) {
      const candidate = candidates[index];
      if (candidate !== undefined) looked[index] = await lookAt(candidate, where, tools);
      tools.progress(`looking into files, ${(done += 1).toString()} of ${candidates.length.toString()}`);
    }
  };
  await Promise.all(Array.from({ length: AT_ONCE }, work));
  const segments = looked.filter((one): one is SegmentFile => 'media' in one);
  return {
    segments: segments.sort((a, b) => a.named - b.named),
    leftOut: looked.filter((one): one is LeftOut => 'reason' in one),
  };
}

async function lookAt(
  { path, instants }: CandidateFile,
  where: Where,
  tools: FootageTools,
): Promise<SegmentFile | LeftOut> {
  const { root, pass, newest } = where;
  const leftOut = (reason: string): LeftOut => ({ path, reason });
  const original = tools.recorded(root, path);
  try {
    const { isFile, size, modified, stamp } = await tools.stat(original);
    if (!isFile) return leftOut('it is no ordinary file');
    if (!tools.isWithin(original, root)) return leftOut('it is a link to a file outside of the recordings');
    if (size === 0) return leftOut('it is empty');
    const fresh = path === newest && tools.now() - modified < STILL;
    const file = fresh ? tools.workFile('newest') : original;
    if (fresh) await tools.copy(original, file);
    const { media, unusable, complaint, errors } = await probe(file, declaredContainer(path), tools);
    if (media === undefined) {
      const why = notOpened(errors, path);
      if (why !== undefined) return leftOut(why);
      return leftOut(
        (await isWithoutIndex(file, complaint, tools)) ? withoutIndex(size, fresh) : whyUnusable(unusable, complaint),
      );
    }
    const length = media.length * 1000;
    const named = passOf(instants, length, modified, pass);
    if (named === undefined)
      return leftOut(
        'the hour of its name was there twice, and the name does not say which is meant: --repeated-hour does',
      );
    const damaged = complaint === '' ? undefined : `read to ${media.length.toFixed(3)} s, then: ${complaint}`;
    const kept = fresh ? (await tools.stat(file)).size : size;
    return { path, original, file, size: kept, stamp, named, length, media, damaged };
  } catch (error) {
    const reason = tools.reasonOf(error);
    if (reason === undefined) throw error;
    return leftOut(reason);
  }
}

/**
 * Probes a file with ffprobe; `complaint` is its first error, `errors` are all.
 *
 * @param container the demuxers that may open it
 */
export async function probe(
  file: string,
  container: string,
  tools: FootageTools,
): Promise<{ media: ProbedFile | undefined; unusable: string; complaint: string; errors: string }> {
  const words = [...PROBE_ARGUMENTS, ...openedAs(container), '-i', fileUrl(file)];
  const { out, err: errors } = await tools.run('ffprobe', words);
  const complaint = (errors.split('\n').find((line) => line.trim() !== '') ?? '')
    .replace(/^\[[^\]]*\] /, '')
    .replace(fileUrl(file), '')
    .trim();
  const media = mediaOf(out === '' ? {} : JSON.parse(out));
  return 'unusable' in media
    ? { media: undefined, unusable: media.unusable, complaint, errors }
    : { media, unusable: '', complaint, errors };
}

function whyUnusable(unusable: string, complaint: string): string {
  return complaint === '' ? unusable : `${unusable} (${complaint})`;
}

/**
 * An mp4 begins with a box `ftyp`, and ends with its index, `moov`, unless that was put in front (ISO/IEC 14496-12).
 */
async function isWithoutIndex(file: string, complaint: string, tools: FootageTools): Promise<boolean> {
  if (!complaint.includes('moov atom not found')) return false;
  const box = await tools.head(file, 8);
  return String.fromCharCode(...box.subarray(4)) === 'ftyp';
}

/** Why nothing can be taken from the file, and how much of it there is. */
function withoutIndex(size: number, fresh: boolean): string {
  if (fresh)
    return 'it was written to a moment ago, and its index (moov), which comes last, is not there yet: ask again when it is finished';
  return (
    `it was cut short, before its index (moov) was written. Its ${bytes(size)} still hold pictures, which cannot be ` +
    'read without it: keep the file; a repair needs a complete file of the same camera'
  );
}
