/** What each recording takes of a volume, one band above the other. */

import { sizeWords } from '../../report/answer/storage.ts';
import { DAY } from '../../standards/time-units.ts';
import type { RecordingFigures, VolumeFigures } from '../../storage/storage.ts';
import { count } from '../../text/words.ts';
import { type Axes, pointIn } from '../axes.ts';
import type { Line, Mark, Name } from '../drawing.ts';
import { SMALLEST as SMALL, words } from '../words.ts';

/** For the names of recordings, beside their bands. */
export const NAMES = 170;

/** Of a band that has room for its name, px. */
const NAMED = 14;

/** Bytes of a recording on a day, from when it begins on an empty disk. */
export function fillOf({ recording: { keep }, bytesPerDay }: RecordingFigures, day: number): number {
  return Math.min(day, keep === undefined ? Infinity : keep / DAY) * bytesPerDay;
}

export function volumeNamed(name: string): Name {
  return { names: 'volumes', name };
}

export function recordingAt(name: string): Name {
  return { names: 'recordings', name };
}

/** What fills a volume together: a recording, or several that are too small to draw one by one. */
interface Band {
  readonly of: readonly RecordingFigures[];
  readonly at: Name;
  readonly role: string;
  readonly name: string;
}

export interface Filling {
  readonly figures: VolumeFigures;
  readonly axes: Axes;
  /** Days after which something is deleted. */
  readonly kept: readonly number[];
  /** The last day that is drawn. */
  readonly last: number;
  /** Names of recordings of which the rate is not known. */
  readonly unknown: readonly string[];
}

/** One line above the other, the last one the whole. */
export function bands({ figures, axes, kept, last, unknown }: Filling): Mark[] {
  const corners = [...new Set([0, ...kept.filter((day) => day < last), last])];
  const below = new Map(corners.map((day) => [day, 0]));
  const all = bandsOf(figures, axes, last);
  return all.map(({ of, at, role, name }, index): Mark => {
    const start = pointIn(axes, last, below.get(last) ?? 0).y;
    const fill = (day: number): number => of.reduce((sum, one) => sum + fillOf(one, day), 0);
    for (const day of corners) below.set(day, (below.get(day) ?? 0) + fill(day));
    const points = corners.map((day) => pointIn(axes, day, below.get(day) ?? 0));
    const end = points.at(-1) ?? pointIn(axes, last, 0);
    const line: Line = { mark: 'line', points, look: index === all.length - 1 ? 'main' : 'quiet' };
    const perDay = of.reduce((sum, { bytesPerDay }) => sum + bytesPerDay, 0);
    const isKnown = of.every(({ recording }) => !unknown.includes(recording.name));
    const label = `${name}: ${sizeWords(perDay, isKnown)} a day, ${sizeWords(fill(last), isKnown)} on day ${last}`;
    const text: Mark[] =
      start - end.y < NAMED ? [] : [words(name, end.x + 8, (start + end.y) / 2 + 4, { size: SMALL, maxWidth: NAMES })];
    return { mark: 'thing', at, role, label, marks: [line, ...text] };
  });
}

/** Those with room for a name each, and the others together above them. */
function bandsOf({ volume, recordings }: VolumeFigures, axes: Axes, last: number): Band[] {
  const isNamed = (one: RecordingFigures): boolean =>
    pointIn(axes, last, 0).y - pointIn(axes, last, fillOf(one, last)).y >= NAMED;
  const own = (one: RecordingFigures): Band => {
    const { name } = one.recording;
    return { of: [one], at: recordingAt(name), role: 'recording', name };
  };
  const others = recordings.filter((one) => !isNamed(one));
  const named = recordings.filter(isNamed).map(own);
  if (others.length < 2) return [...named, ...others.map(own)];
  const name = named.length === 0 ? count(others.length, 'recording') : `${others.length} others`;
  return [...named, { of: others, at: volumeNamed(volume.name), role: 'recordings', name }];
}
