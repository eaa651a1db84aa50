/** The sidecar, a record of what the footage was made from: `schemas/footage.schema.json` describes it. */

import type { Shown } from './clock.ts';
import { formatWords } from './outputs.ts';
import type { Asked, Segment, TakenPiece } from './segment.ts';
import type { Break } from './timeline.ts';

export const CAUTION =
  'Footage of people falls under privacy law in most places: who may see it, pass it on and keep it is bounded. ' +
  'Joined footage is a copy; evidence needs the originals, which are left as they are. Local law and licensed practice decide.';

export interface ChecksummedSegment extends Segment {
  readonly size: number;
  readonly sha256: string;
  /** Whether the file was still being written, so that only a part was taken. */
  readonly growing: boolean;
}

export interface OutputMade {
  readonly path: string;
  readonly size: number;
  readonly sha256: string;
  readonly pieces: readonly (TakenPiece<ChecksummedSegment> & { readonly position: number })[];
  readonly commands: readonly (readonly string[])[];
}

export interface LeftOut {
  readonly path: string;
  readonly reason: string;
}

export interface MadeFootage {
  readonly site: string | undefined;
  readonly recording: string;
  readonly folder: string;
  readonly timezone: string | undefined;
  readonly asked: Asked;
  /** How much later than its name a file may have begun, in milliseconds. */
  readonly unit: number;
  readonly breaks: readonly Break[];
  readonly leftOut: readonly LeftOut[];
  readonly outputs: readonly OutputMade[];
  readonly versions: { readonly plumbline: string; readonly ffmpeg: string };
}

export type Sidecar = Readonly<Record<string, unknown>>;

export function sidecarOf(made: MadeFootage, shown: Shown): Sidecar {
  const { site, recording, folder, timezone, asked, unit, breaks, leftOut, outputs, versions } = made;
  const pieces = outputs.flatMap((output) => output.pieces);
  return {
    'caution': CAUTION,
    'site': site ?? null,
    recording,
    'recordings': folder,
    'timezone': timezone ?? null,
    'uncertainty': unit / 1000,
    'asked': { from: shown(asked.from), to: shown(asked.to), exact: asked.exact },
    'got': spanOf(pieces, shown),
    'gaps': breaks.filter(({ kind }) => kind === 'gap').map((gap) => breakOf(gap, shown)),
    'overlaps': breaks.filter(({ kind }) => kind === 'overlap').map((overlap) => breakOf(overlap, shown)),
    'left-out': leftOut.map(({ path, reason }) => ({ path, reason })),
    'outputs': outputs.map((output) => outputOf(output, shown)),
    versions,
  };
}

function outputOf({ path, size, sha256, pieces, commands }: OutputMade, shown: Shown): Sidecar {
  const [first] = pieces;
  return {
    path,
    size,
    sha256,
    ...spanOf(pieces, shown),
    frames: pieces.reduce((sum, { frames }) => sum + frames, 0),
    format: first === undefined ? '' : formatWords(first.segment),
    segments: pieces.map(({ segment, piece, frames, from, to, position }) => ({
      path: segment.path,
      size: segment.size,
      sha256: segment.sha256,
      growing: segment.growing,
      damaged: segment.damaged ?? null,
      taken: piece.kind,
      from: shown(from),
      to: shown(to),
      frames,
      position: rounded(position),
    })),
    commands,
  };
}

/** The span from the first frame to the end of the last. */
function spanOf(pieces: readonly TakenPiece[], shown: Shown): { from: string; to: string } {
  return {
    from: shown(pieces.reduce((least, { from }) => Math.min(least, from), Infinity)),
    to: shown(pieces.reduce((most, { to }) => Math.max(most, to), -Infinity)),
  };
}

function breakOf({ from, to }: Break, shown: Shown): Sidecar {
  return { from: shown(from), to: shown(to), seconds: rounded((to - from) / 1000) };
}

function rounded(seconds: number): number {
  return Math.round(seconds * 1e6) / 1e6;
}
