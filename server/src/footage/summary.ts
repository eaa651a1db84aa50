/** The summary for the user. */

import type { Shown } from './clock.ts';
import type { LeftOut, MadeFootage } from './sidecar.ts';
import { count, duration } from '../text/words.ts';
import { visible } from '../text/visible.ts';

export function summary({ asked, breaks, leftOut, outputs }: MadeFootage, shown: Shown): string {
  const lines: string[] = [];
  for (const { path, pieces } of outputs) {
    const frames = pieces.reduce((sum, piece) => sum + piece.frames, 0);
    const files = new Set(pieces.map(({ segment }) => segment.path)).size;
    lines.push(
      `${visible(path)}: ${count(frames, 'frame')} from ${count(files, 'file')}, ${span(pieces[0]?.from, pieces.at(-1)?.to, shown)}`,
    );
  }
  const pieces = outputs.flatMap((output) => output.pieces);
  const [first, last] = [pieces[0], pieces.at(-1)];
  const [early, late] = [asked.from - (first?.from ?? 0), (last?.to ?? 0) - asked.to];
  if (!asked.exact && (early > 0.5 || late > 0.5))
    lines.push(
      `Cut at keyframes: ${duration(Math.max(0, Math.round(early)))} before and ${duration(Math.max(0, Math.round(late)))} after ` +
        'are there too. --exact cuts to the frame.',
    );
  const anew = pieces.filter(({ piece }) => piece.kind === 'encoded').reduce((sum, { frames }) => sum + frames, 0);
  if (anew > 0)
    lines.push(`${count(anew, 'frame')} at the edges were encoded anew; all others are as they were recorded.`);
  for (const { kind, from, to } of breaks)
    lines.push(
      `${kind === 'gap' ? 'Gap' : 'Twice'}: ${shown(from)} to ${shown(to)}, ${duration(Math.round(to - from))}`,
    );
  const damaged = new Map(pieces.map(({ segment }) => [segment.path, segment.damaged]));
  for (const [path, damage] of damaged) if (damage !== undefined) lines.push(`Damaged: ${visible(path)} was ${damage}`);
  const others = new Set(pieces.flatMap(({ segment }) => segment.media.others));
  if (others.size > 0) lines.push(`Left out: streams of ${[...others].join(', ')}; video and audio are taken.`);
  return [...lines, ...leftOutLines(leftOut)].map((line) => `${line}\n`).join('');
}

/** Whether the result has all of the requested time. */
export function isComplete({ leftOut, breaks }: MadeFootage): boolean {
  return leftOut.length === 0 && !breaks.some(({ kind }) => kind === 'gap');
}

/** The files that could not be used, and why. */
export function leftOutLines(leftOut: readonly LeftOut[]): string[] {
  return leftOut.map(({ path, reason }) => `Left out: ${visible(path)}: ${reason}`);
}

function span(from: number | undefined, to: number | undefined, shown: Shown): string {
  return `${shown(from ?? 0)} to ${shown(to ?? 0)}`;
}
