/** From the names of files to the finished result. */

import { backlogOf, keyframeIntervalOf } from '../recordings/keyframes.ts';
import { bytes } from '../text/words.ts';
import { clockOf } from './clock.ts';
import { segmentsFor, spanWords } from './find-segments.ts';
import { join } from './join.ts';
import type { SegmentFile } from './look-into.ts';
import { checksumsOf, stayUnchanged } from './originals.ts';
import { type PlannedOutput, nameOf, outputsOf } from './outputs.ts';
import { Refused } from './refused.ts';
import { type TakenPiece, breaksOf, taken } from './segment.ts';
import { type ChecksummedSegment, type LeftOut, type MadeFootage, type OutputMade, sidecarOf } from './sidecar.ts';
import { leftOutLines } from './summary.ts';
import { isNoSource, mayWrite, sidecarPath } from './targets.ts';
import { type Timeline, timelineOf } from './timeline.ts';
import type { Finished, FootageTools } from './tools.ts';
import type { WantedFootage } from './wanted.ts';

/**
 * Finds, joins and describes the requested footage.
 *
 * @throws Refused, DiskFull, or the system's errors; then no result has been put in place
 */
export async function getFootage(wanted: WantedFootage, tools: FootageTools): Promise<MadeFootage> {
  const { site, recording, names, zone, asked, root, container, out } = wanted;
  const unit = names.roundedTo ?? 0;
  const { segments, leftOut } = await segmentsFor(wanted, tools);
  const timeline = timelineOf(segments, unit, backlogOf(keyframeIntervalOf(site, recording)));
  const pieces = piecesOf(timeline, wanted, leftOut);
  const results = resultsOf(outputsOf(pieces, container), out);
  for (const { target } of results) mayBecome(target, segments, wanted, tools);
  hasRoom(pieces, out, tools);
  const originals = await checksumsOf(pieces, tools);
  const finished: Finished[] = [];
  const outputs: OutputMade[] = [];
  for (const result of results) {
    const { file, output } = await joined(result, originals, tools);
    finished.push({ file, out: result.target });
    outputs.push(output);
  }
  await stayUnchanged(originals, tools);
  const made: MadeFootage = {
    site: site.name,
    recording: recording.name,
    folder: root,
    timezone: zone,
    asked,
    unit,
    breaks: breaksOf(timeline, asked),
    leftOut,
    outputs,
    versions: tools.versions,
  };
  const sidecar = `${JSON.stringify(sidecarOf(made, clockOf(zone)), null, 2)}\n`;
  tools.save(finished, { path: sidecarPath(out), text: sidecar });
  return made;
}

/** @throws Refused where there is nothing, or an exact cut is impossible */
function piecesOf(
  timeline: Timeline<SegmentFile>,
  { recording, asked, zone }: WantedFootage,
  leftOut: readonly LeftOut[],
): TakenPiece<SegmentFile>[] {
  const pieces = taken(timeline, asked);
  if ('impossible' in pieces) throw new Refused(pieces.impossible);
  if (pieces.length === 0)
    throw new Refused(`${recording.name} has nothing from ${spanWords(asked, clockOf(zone))}.`, leftOutLines(leftOut));
  return pieces;
}

/** A file of the result. */
interface Result {
  readonly planned: PlannedOutput<SegmentFile>;
  /** Its final path. */
  readonly target: string;
  /** Its name in the work folder. */
  readonly name: string;
}

function resultsOf(outputs: readonly PlannedOutput<SegmentFile>[], out: string): Result[] {
  return outputs.map((planned, index) => ({
    planned,
    target: nameOf(out, index, outputs.length),
    name: `result-${(index + 1).toString()}`,
  }));
}

/** @throws Refused where a result must not be written there */
function mayBecome(
  target: string,
  segments: readonly SegmentFile[],
  { root, overwrite }: WantedFootage,
  tools: FootageTools,
): void {
  mayWrite(target, root, overwrite, tools);
  isNoSource(
    target,
    segments.map(({ original }) => original),
    tools,
  );
}

/** Checks the free space first: a copy takes as much room as its source. */
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

async function joined(
  { planned, target, name }: Result,
  originals: ReadonlyMap<SegmentFile, ChecksummedSegment>,
  tools: FootageTools,
): Promise<{ file: string; output: OutputMade }> {
  const { file, pieces, commands } = await join(planned, name, tools);
  const { size } = await tools.stat(file);
  const sha256 = await tools.hash(file, () => tools.progress('taking the checksum'));
  const described = pieces.map(({ segment, ...piece }) => {
    const original = originals.get(segment);
    if (original === undefined) throw new Error(`${segment.path} has no checksum`);
    return { ...piece, segment: original };
  });
  return { file, output: { path: tools.baseName(target), size, sha256, pieces: described, commands } };
}
