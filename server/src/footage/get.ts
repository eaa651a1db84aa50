/** From the names of files to the finished result. */

import { fileNames } from '../recordings/file-names.ts';
import { backlogOf, keyframeIntervalOf } from '../recordings/keyframes.ts';
import type { Recording } from '../site/model.ts';
import { DAY, HOUR } from '../standards/time-units.ts';
import { bytes } from '../text/words.ts';
import { candidatesOf, nearest } from './candidates.ts';
import { type Shown, clockOf } from './clock.ts';
import { join } from './join.ts';
import { type SegmentFile, lookInto } from './look-into.ts';
import { nameOf, outputsOf } from './outputs.ts';
import { Refused } from './refused.ts';
import { type Asked, type TakenPiece, breaksOf, taken } from './segment.ts';
import { type LeftOut, type Made, type OutputMade, type ChecksummedSegment, sidecarOf } from './sidecar.ts';
import { leftOutLines } from './summary.ts';
import { isNoSource, mayWrite, sidecarPath } from './targets.ts';
import { timelineOf } from './timeline.ts';
import type { Finished, FootageTools } from './tools.ts';
import type { Wanted } from './wanted.ts';

/** Files are looked for so long before what is asked for, in milliseconds, where the site does not say how long they are. */
const SEARCHED_BEFORE = HOUR;

/**
 * Finds, joins and describes what there is of it.
 *
 * @throws Refused, DiskFull, or what the system refuses; nothing has got its name then
 */
export async function getFootage(wanted: Wanted, tools: FootageTools): Promise<Made> {
  const { site, recording, names, zone, asked, root, container, out } = wanted;
  const unit = names.roundedTo ?? 0;
  const { segments, leftOut } = await look(wanted, unit, tools);
  const timeline = timelineOf(segments, unit, backlogOf(keyframeIntervalOf(site, recording)));
  const pieces = taken(timeline, asked);
  if ('impossible' in pieces) throw new Refused(pieces.impossible);
  if (pieces.length === 0)
    throw new Refused(`${recording.name} has nothing from ${span(asked, clockOf(zone))}.`, leftOutLines(leftOut));
  const planned = outputsOf(pieces, container);
  const targets = planned.map((_, index) => nameOf(out, index, planned.length));
  for (const target of targets) {
    mayWrite(target, root, wanted.overwrite, tools);
    isNoSource(
      target,
      segments.map(({ original }) => original),
      tools,
    );
  }
  hasRoom(pieces, out, tools);
  const sealed = await seal(pieces, tools);
  const outputs: OutputMade[] = [];
  const files: Finished[] = [];
  for (const [index, run] of planned.entries()) {
    const target = targets[index] ?? out;
    const joined = await join(run, `result-${(index + 1).toString()}`, tools);
    const { size } = await tools.stat(joined.file);
    const sha256 = await tools.hash(joined.file, () => tools.progress('taking the checksum'));
    const pieceOf = (piece: (typeof joined.pieces)[number]): OutputMade['pieces'][number] => ({
      ...piece,
      segment: sealed.get(piece.segment) ?? never(),
    });
    outputs.push({
      path: tools.baseName(target),
      size,
      sha256,
      pieces: joined.pieces.map(pieceOf),
      commands: joined.commands,
    });
    files.push({ file: joined.file, out: target });
  }
  await unchanged(sealed, tools);
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
    versions: tools.versions,
  };
  tools.save(files, { path: sidecarPath(out), text: `${JSON.stringify(sidecarOf(made, clockOf(zone)), null, 2)}\n` });
  return made;
}

/** The files that can hold something of it; and what cannot be used, and why. */
async function look(
  { recording, names, asked, root, pass, zone }: Wanted,
  unit: number,
  tools: FootageTools,
): Promise<{ segments: SegmentFile[]; leftOut: LeftOut[] }> {
  tools.progress('looking for files');
  const { found, skipped } = tools.find(root, names);
  const candidates = candidatesOf(
    found,
    asked,
    recording.segment === undefined ? SEARCHED_BEFORE : 3 * recording.segment + unit,
  );
  if (candidates.length === 0)
    throw new Refused(
      nothing(found.length === 0 ? undefined : nearest(found, asked), recording, asked, root, clockOf(zone)),
    );
  const newest = found.reduce(
    (latest, one) => ((one.instants.at(-1) ?? 0) > (latest.instants.at(-1) ?? 0) ? one : latest),
    candidates[0] ?? never(),
  );
  const looked = await lookInto(candidates, { root, pass, newest: newest.path }, tools);
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
function hasRoom(pieces: readonly TakenPiece<SegmentFile>[], out: string, tools: FootageTools): void {
  const needed = pieces.reduce(
    (sum, { segment, frames }) => sum + (segment.size * frames) / segment.media.frames.length,
    0,
  );
  const free = tools.freeBeside(out);
  if (free < needed)
    throw new Refused(
      `The disk of ${tools.folderOf(out)} has ${bytes(free)} free, and the footage needs ${bytes(needed)}. Nothing was written.`,
    );
}

/** The checksum of every file that something is taken from. */
async function seal(
  pieces: readonly TakenPiece<SegmentFile>[],
  tools: FootageTools,
): Promise<Map<SegmentFile, ChecksummedSegment & SegmentFile>> {
  const segments = [...new Set(pieces.map(({ segment }) => segment))];
  const total = segments.reduce((sum, { size }) => sum + size, 0);
  let read = 0;
  const sealed = new Map<SegmentFile, ChecksummedSegment & SegmentFile>();
  for (const segment of segments) {
    const sha256 = await tools.hash(segment.file, (count) => {
      read += count;
      tools.progress(
        `taking checksums of the originals, ${Math.min(100, Math.round((100 * read) / total)).toString()} %`,
      );
    });
    const growing = segment.file !== segment.original && (await tools.stat(segment.original)).size !== segment.size;
    sealed.set(segment, { ...segment, sha256, growing });
  }
  return sealed;
}

/** @throws Refused where a file was written to in the meantime, so that its checksum may be of other bytes */
async function unchanged(sealed: ReadonlyMap<SegmentFile, ChecksummedSegment>, tools: FootageTools): Promise<void> {
  for (const { path, original, file, stamp } of sealed.keys()) {
    if (file !== original) continue;
    if ((await tools.stat(original)).stamp !== stamp)
      throw new Refused(`${path} was written to while it was read. Nothing was kept: ask again.`);
  }
}

function never(): never {
  throw new Error('a file that was looked into is not there');
}
