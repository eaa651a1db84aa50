/** The files that footage is taken from: their checksums, and a check that they did not change meanwhile. */

import type { SegmentFile } from './look-into.ts';
import { Refused } from './refused.ts';
import type { TakenPiece } from './segment.ts';
import type { ChecksummedSegment } from './sidecar.ts';
import type { FootageTools } from './tools.ts';

/** The checksum of every source file. */
export async function checksumsOf(
  pieces: readonly TakenPiece<SegmentFile>[],
  tools: FootageTools,
): Promise<ReadonlyMap<SegmentFile, ChecksummedSegment>> {
  const segments = [...new Set(pieces.map(({ segment }) => segment))];
  const total = segments.reduce((sum, { size }) => sum + size, 0);
  let read = 0;
  const sealed = new Map<SegmentFile, ChecksummedSegment>();
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

/** @throws Refused where a file was written to in the meantime, as its checksum may then be wrong */
export async function stayUnchanged(
  sealed: ReadonlyMap<SegmentFile, ChecksummedSegment>,
  tools: FootageTools,
): Promise<void> {
  for (const { path, original, file, stamp } of sealed.keys()) {
    if (file !== original) continue;
    if ((await tools.stat(original)).stamp !== stamp)
      throw new Refused(`${path} was written to while it was read. Nothing was kept: ask again.`);
  }
}
