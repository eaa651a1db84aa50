/** Makes one result in the work folder: writes its pieces, joins them and counts the frames of the result. */

import { ANY_CONTAINER, openedAs } from './declared-container.ts';
import { type Listed, concatList, joinArguments, needsOwnFile, pieceArguments } from './ffmpeg-arguments.ts';
import { type SegmentFile, probe } from './look-into.ts';
import { type PlannedOutput, formatWords } from './outputs.ts';
import { DiskFull, Refused } from './refused.ts';
import type { TakenPiece } from './segment.ts';
import type { FootageTools } from './tools.ts';

export interface Joined {
  /** The result, in the work folder. */
  readonly file: string;
  /** The pieces, each with its position in the result, in seconds. */
  readonly pieces: readonly (TakenPiece<SegmentFile> & { readonly position: number })[];
  /** The arguments of each FFmpeg run. */
  readonly commands: readonly (readonly string[])[];
}

/** @throws Refused where FFmpeg fails, or where not every frame is in the result */
export async function join(planned: PlannedOutput<SegmentFile>, name: string, tools: FootageTools): Promise<Joined> {
  const commands: string[][] = [];
  const listed: Listed[] = [];
  const pieces: TakenPiece<SegmentFile>[] = [];
  for (const [index, piece] of planned.pieces.entries()) {
    tools.progress(`preparing pieces, ${(index + 1).toString()} of ${planned.pieces.length.toString()}`);
    const { file, media } = piece.segment;
    const span = (piece.to - piece.from) / 1000;
    if (!needsOwnFile(piece, planned, file)) {
      listed.push({ path: file, container: media.container, lead: media.lead, span });
      pieces.push(piece);
      continue;
    }
    const own = `${name}-${index.toString()}`;
    const command = pieceArguments(piece, planned, file, own);
    commands.push(command);
    const made = await written(piece, command, own, tools);
    listed.push({ path: own, container: ANY_CONTAINER, lead: made.lead, span });
    pieces.push({ ...piece, frames: made.frames });
  }
  await tools.write(tools.workFile(`${name}.txt`), concatList(listed));
  const command = joinArguments(planned, `${name}.txt`, name);
  commands.push(command);
  await ffmpeg(command, tools, planned, sum(pieces.map(({ from, to }) => to - from)));
  await counted(planned, pieces, name, tools);
  let position = 0;
  return {
    file: tools.workFile(name),
    commands,
    pieces: pieces.map((piece) => {
      const placed = { ...piece, position };
      position += (piece.to - piece.from) / 1000;
      return placed;
    }),
  };
}

/** Writes the piece into a file of its own, and counts its frames. */
async function written(
  piece: TakenPiece<SegmentFile>,
  command: readonly string[],
  own: string,
  tools: FootageTools,
): Promise<{ lead: number; frames: number }> {
  await ffmpeg(command, tools);
  const { media, unusable } = await probe(tools.workFile(own), ANY_CONTAINER, tools);
  const { path, damaged } = piece.segment;
  if (media === undefined) throw new Refused(`Nothing could be taken of ${path}: ${unusable}.`);
  // A damaged file may give one frame less than planned, where its last frame is incomplete.
  const short = piece.frames - media.frames.length;
  if (short !== 0 && !(damaged !== undefined && short > 0 && short <= 1))
    throw new Refused(
      `Of ${path} ${media.frames.length.toString()} frames were taken instead of ${piece.frames.toString()}; nothing was kept.`,
    );
  return { lead: media.lead, frames: media.frames.length };
}

async function ffmpeg(
  command: readonly string[],
  tools: FootageTools,
  planned?: PlannedOutput,
  length = 0,
): Promise<void> {
  const line = (text: string): void => {
    const at = /^out_time_us=(\d+)/.exec(text)?.[1];
    if (at !== undefined && length > 0)
      tools.progress(`joining, ${Math.min(100, Math.round(Number(at) / 10 / length)).toString()} %`);
  };
  const { status, err } = await tools.run('ffmpeg', command, line);
  if (/No space left on device|Disk quota exceeded|File too large/.test(err)) throw new DiskFull(err);
  if (status === 0) return;
  const first = planned?.pieces[0];
  if (
    /codec not currently supported in container|Only audio, video|Unsupported codec|incorrect codec parameters/i.test(
      err,
    ) &&
    first !== undefined
  )
    throw new Refused(
      `This container cannot hold ${formatWords(first.segment)} as it is. Let --out end in .mkv, which holds nearly all.`,
    );
  if (/Unknown encoder/.test(err))
    throw new Refused('This FFmpeg has no encoder for these pictures (libx264, libx265). Ask without --exact.');
  throw new Refused(`FFmpeg failed, and nothing was kept: ${err.trim().split('\n').slice(-3).join(' ')}`);
}

/** Whether the result has every frame, and the audio. */
async function counted(
  planned: PlannedOutput<SegmentFile>,
  pieces: readonly TakenPiece[],
  name: string,
  tools: FootageTools,
): Promise<void> {
  tools.progress('counting frames');
  const words = [
    '-v',
    'error',
    '-count_packets',
    '-show_entries',
    'stream=codec_type,nb_read_packets',
    '-of',
    'json',
    ...openedAs(ANY_CONTAINER),
    `file:${name}`,
  ];
  const { out } = await tools.run('ffprobe', words);
  const { streams = [] } = JSON.parse(out || '{}') as { streams?: { codec_type: string; nb_read_packets: string }[] };
  const expected = sum(pieces.map(({ frames }) => frames));
  const got = Number(streams.find(({ codec_type: kind }) => kind === 'video')?.nb_read_packets ?? 0);
  if (got !== expected)
    throw new Refused(
      `The joined file has ${got.toString()} frames, and its parts have ${expected.toString()}: nothing was kept.`,
    );
  const sounds = planned.pieces[0]?.segment.media.audio.length ?? 0;
  if (
    streams.filter(({ codec_type: kind, nb_read_packets: count }) => kind === 'audio' && Number(count) > 0).length <
    sounds
  )
    throw new Refused('The audio did not come through into the joined file: nothing was kept.');
  // The bytes must be on the disk before the rename, or a power cut could leave a name without them.
  await tools.sync(tools.workFile(name));
  if ((await tools.stat(tools.workFile(name))).size === 0)
    throw new Refused('The joined file is empty: nothing was kept.');
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}
