/** An examined recording, with the words for its times and files. */

import { clockOf } from '../../footage/clock.ts';
import type { FileNames } from '../../recordings/file-names.ts';
import { format } from '../../standards/strftime-format.ts';
import { offsetText, zonedTime } from '../../standards/time-zone.ts';
import { type Course, type Lengths, courseOf } from './course.ts';
import type { Stretch } from './stretches.ts';
import type { Holding, Surveyed } from './survey.ts';

export interface Looked extends Surveyed {
  readonly course: Course;
  /** An instant as the clock of the site shows it, to the second: `2026-10-25T01:30:00+01:00`. */
  time(instant: number): string;
  /** The path of a row's file. */
  path(index: number): string;
}

const NO_LENGTHS: Lengths = new Map();

/** The most gaps and overlaps of a recording that are kept one by one. */
const MAX_KEPT = 100_000;

/** The gaps and overlaps of a recording in order: the same that its course counts. */
export function stretchesOf(
  surveyed: Surveyed,
  zone: string | undefined,
  now: number,
): { readonly gaps: readonly Stretch[]; readonly overlaps: readonly Stretch[] } {
  const gaps: Stretch[] = [];
  const overlaps: Stretch[] = [];
  const into = (all: Stretch[]) => (stretch: Stretch) => {
    if (all.length < MAX_KEPT) all.push(stretch);
  };
  courseOf(surveyed, zone, now, NO_LENGTHS, { gap: into(gaps), overlap: into(overlaps) });
  return { gaps, overlaps };
}

/** @param lengths by recording, where files were probed */
export function lookedAt(
  { zone, recordings }: Holding,
  now: number,
  lengths: ReadonlyMap<string, Lengths> = new Map(),
): Looked[] {
  const shown = clockOf(zone);
  const time = (instant: number): string => shown(Math.floor(instant / 1000) * 1000).replace('.000', '');
  return recordings.map((surveyed) => {
    const { recording, rows, names } = surveyed;
    return {
      ...surveyed,
      course: courseOf(surveyed, zone, now, lengths.get(recording.name) ?? NO_LENGTHS),
      time,
      path: (index) =>
        pathOf(names, zone, rows.start(index), rows.offset(index)) ?? `the file of ${time(rows.start(index))}`,
    };
  });
}

/**
 * The name that was read as this time. Names are not stored but rebuilt from the time; `undefined` where the time does
 * not determine the whole name, such as the letters of a zone.
 */
export function pathOf(
  names: FileNames,
  zone: string | undefined,
  start: number,
  offset: number | undefined,
): string | undefined {
  const time = zonedTime(offset === undefined ? (zone ?? 'UTC') : offsetText(offset), start);
  const path = format(names.pattern.replace(/^(\.?\/)+/, '').replace(/\/(\.?\/)+/g, '/'), time);
  return names.read(path)?.instants.includes(start) === true ? path : undefined;
}
