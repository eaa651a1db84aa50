/** From the names of files to the finished result. */

import { stat } from 'node:fs/promises';
import { statfsSync } from 'node:fs';
import { basename, dirname } from 'node:path';
import { type Pass, candidatesOf, nearest } from '../../footage/candidates.ts';
import { type Shown, clockOf } from '../../footage/clock.ts';
import { nameOf, outputsOf } from '../../footage/outputs.ts';
import { type Asked, type Taken, breaksOf, taken } from '../../footage/segment.ts';
import { type LeftOut, type Made, type OutputMade, type Sealed, sidecarOf } from '../../footage/sidecar.ts';
import { timelineOf } from '../../footage/timeline.ts';
import { backlogOf, keyframeIntervalOf } from '../../recordings/keyframes.ts';
import { codeOf, reasonOf } from '../../machine/failures.ts';
import { type FileNames, fileNames } from '../../recordings/file-names.ts';
import type { Recording, Site } from '../../site/model.ts';
import { bytes } from '../../text/words.ts';
import { CannotDo } from '../../machine/cannot-do.ts';
import { versionOf } from '../../machine/ffmpeg.ts';
import { findFiles } from './find.ts';
import { sha256Of } from './hash.ts';
import { join } from './join.ts';
import { type OnDisk, lookInto } from './look-into.ts';
import { progress, progressDone } from './progress.ts';
import { isNoSource, mayWrite, save, sidecarPath } from './save.ts';
import { summary, told } from './summary.ts';
import { WorkFolder } from './work-folder.ts';
import manifest from '../../../../package.json' with { type: 'json' };
import { DAY, HOUR } from '../../standards/time-units.ts';

export interface Wanted {
  readonly site: Site;
  readonly recording: Recording;
  readonly names: FileNames;
  readonly zone: string | undefined;
  readonly asked: Asked;
  /** Where the recordings lie. */
  readonly root: string;
  /** FFmpeg's name of what to write. */
  readonly container: string;
  readonly out: string;
  readonly pass: Pass | undefined;
  readonly overwrite: boolean;
}

/** Files are looked for so long before what is asked for, in milliseconds, where the site does not say how long they are. */
const SEARCHED_BEFORE = HOUR;

/** @returns the exit status */
export async function getFootage(wanted: Wanted): Promise<number> {
  const ffmpeg = await versionOf();
  const work = new WorkFolder(wanted.out);
  try {
    const made = await make(wanted, work, ffmpeg);
    progressDone();
    process.stdout.write(summary(made, clockOf(wanted.zone)));
    return made.leftOut.length > 0 || made.breaks.some(({ kind }) => kind === 'gap') ? 1 : 0;
  } catch (error) {
    progressDone();
    if (work.stopped.signal.aborted) throw new CannotDo('Stopped. Nothing was written.');
    const code = codeOf(error);
    if (code === undefined || error instanceof CannotDo) throw error;
    throw new CannotDo(
      full(code)
        ? `The disk of ${dirname(wanted.out)} is full. Nothing was kept there; the originals are as they were.`
        : `It could not be done: ${reasonOf(code)}.`,
    );
  } finally {
    work.remove();
  }
}

function full(code: string): boolean {
  return code === 'ENOSPC' || code === 'EDQUOT' || code === 'EFBIG';
}

async function make(wanted: Wanted, work: WorkFolder, ffmpeg: string): Promise<Made> {
  const { site, recording, names, zone, asked, root, container, out } = wanted;
  const unit = names.roundedTo ?? 0;
  const { segments, leftOut } = await look(wanted, work, unit);
  const timeline = timelineOf(segments, unit, backlogOf(keyframeIntervalOf(site, recording)));
  const pieces = taken(timeline, asked);
  if ('impossible' in pieces) throw new CannotDo(pieces.impossible);
  if (pieces.length === 0)
    throw new CannotDo(`${recording.name} has nothing from ${span(asked, clockOf(zone))}.\n${told(leftOut)}`.trimEnd());
  const planned = outputsOf(pieces, container);
  const targets = planned.map((_, index) => nameOf(out, index, planned.length));
  for (const target of targets) {
    mayWrite(target, root, wanted.overwrite);
    isNoSource(
      target,
      segments.map(({ original }) => original),
    );
  }
  hasRoom(pieces, out);
  const sealed = await seal(pieces, work);
  const outputs: OutputMade[] = [];
  const files: { file: string; out: string }[] = [];
  for (const [index, run] of planned.entries()) {
    const target = targets[index] ?? out;
    const joined = await join(run, `result-${(index + 1).toString()}`, work);
    const { size } = await stat(joined.file);
    const sha256 = await sha256Of(joined.file, work.stopped.signal, () => progress('taking the checksum'));
    const pieceOf = (piece: (typeof joined.pieces)[number]): OutputMade['pieces'][number] => ({
      ...piece,
      segment: sealed.get(piece.segment) ?? never(),
    });
    outputs.push({
      path: basename(target),
      size,
      sha256,
      pieces: joined.pieces.map(pieceOf),
      commands: joined.commands,
    });
    files.push({ file: joined.file, out: target });
  }
  await unchanged(sealed);
  const breaks = breaksOf(timeline, asked);
  const made: Made = {
    site: site.name,
    recording: recording.name,
    folder: root,
    timezone: zone,
    asked,
    unit,
    breaks,
    leftOut,
    outputs,
    versions: { plumbline: manifest.version, ffmpeg },
  };
  save(files, sidecarPath(out), `${JSON.stringify(sidecarOf(made, clockOf(zone)), null, 2)}\n`, work);
  return made;
}

/** The files that can hold something of it; what cannot be used is told. */
async function look(
  { recording, names, asked, root, pass, zone }: Wanted,
  work: WorkFolder,
  unit: number,
): Promise<{ segments: OnDisk[]; leftOut: LeftOut[] }> {
  progress('looking for files');
  const { found, skipped } = findFiles(root, names);
  const candidates = candidatesOf(
    found,
    asked,
    recording.segment === undefined ? SEARCHED_BEFORE : 3 * recording.segment + unit,
  );
  if (candidates.length === 0)
    throw new CannotDo(
      nothing(found.length === 0 ? undefined : nearest(found, asked), recording, asked, root, clockOf(zone)),
    );
  const newest = found.reduce(
    (latest, one) => ((one.instants.at(-1) ?? 0) > (latest.instants.at(-1) ?? 0) ? one : latest),
    candidates[0] ?? never(),
  );
  const looked = await lookInto(candidates, { root, work, pass, newest: newest.path });
  const neverShown = `no clock in ${zone ?? ''} showed the time of its name, which they skipped`;
  // By a clock of UTC they lie within a day of when they were meant to be.
  const byUtc = fileNames(names.pattern, 'UTC');
  const near = skipped.filter((path) =>
    byUtc.read(path)?.instants.some((instant) => instant > asked.from - DAY && instant < asked.to + DAY),
  );
  return {
    segments: looked.segments,
    leftOut: [...looked.leftOut, ...near.map((path) => ({ path, reason: neverShown }))],
  };
}

function nothing(
  near: ReturnType<typeof nearest> | undefined,
  { name, file = '' }: Recording,
  asked: Asked,
  root: string,
  shown: Shown,
): string {
  if (near === undefined) return `No file in ${root} is named like those of ${name}, ${file}.`;
  const known = [
    near.before === undefined ? '' : `the last file before is of ${shown(near.before)}`,
    near.after === undefined ? '' : `the first after is of ${shown(near.after)}`,
  ];
  return `${name} has nothing from ${span(asked, shown)}: ${known.filter((part) => part !== '').join(', ')}.`;
}

function span({ from, to }: Asked, shown: Shown): string {
  return `${shown(from)} to ${shown(to)}`;
}

/** Nothing is begun that cannot end well: what is copied takes as much room again. */
function hasRoom(pieces: readonly Taken<OnDisk>[], out: string): void {
  const needed = pieces.reduce(
    (sum, { segment, frames }) => sum + (segment.size * frames) / segment.media.frames.length,
    0,
  );
  const { bavail, bsize } = statfsSync(dirname(out));
  if (bavail * bsize < needed)
    throw new CannotDo(
      `The disk of ${dirname(out)} has ${bytes(bavail * bsize)} free, and the footage needs ${bytes(needed)}. Nothing was written.`,
    );
}

/** The checksum of every file that something is taken from. */
async function seal(pieces: readonly Taken<OnDisk>[], work: WorkFolder): Promise<Map<OnDisk, Sealed & OnDisk>> {
  const segments = [...new Set(pieces.map(({ segment }) => segment))];
  const total = segments.reduce((sum, { size }) => sum + size, 0);
  let read = 0;
  const sealed = new Map<OnDisk, Sealed & OnDisk>();
  for (const segment of segments) {
    const sha256 = await sha256Of(segment.file, work.stopped.signal, (count) => {
      read += count;
      progress(`taking checksums of the originals, ${Math.min(100, Math.round((100 * read) / total)).toString()} %`);
    });
    const growing = segment.file !== segment.original && (await stat(segment.original)).size !== segment.size;
    sealed.set(segment, { ...segment, sha256, growing });
  }
  return sealed;
}

/** @throws CannotDo where a file was written to in the meantime, so that its checksum may be of other bytes */
async function unchanged(sealed: ReadonlyMap<OnDisk, Sealed>): Promise<void> {
  for (const { path, original, file, size, modified } of sealed.keys()) {
    if (file !== original) continue;
    const now = await stat(original);
    if (now.size !== size || now.mtimeMs !== modified)
      throw new CannotDo(`${path} was written to while it was read. Nothing was kept: ask again.`);
  }
}

function never(): never {
  throw new Error('a file that was looked into is not there');
}
