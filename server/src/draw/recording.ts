/** A recording in time, as its files on the disk have it: a row for each day of the site's clock, gaps never too thin to see. */

import { type Looked, stretchesOf } from '../audit/recordings/looked.ts';
import type { Plan } from '../plan.ts';
import { DAY, HOUR } from '../standards/time-units.ts';
import { count, days as daysWords, duration } from '../text/words.ts';
import type { Drawing, DrawingKind, Look, Mark, Measured } from './drawing.ts';
import { words } from './words.ts';
import { type TimeSpan, ageWords, lengthOf, missingWords, overlapWords, within } from './recording/spans.ts';
import { type LocalDay, daysBetween } from './recording/local-days.ts';
import { type Course, daysTable, recordingNamed, stretchesTable, wholeTable } from './recording/tables.ts';

const MARGIN = 16;
const LEFT = 96;
const TOP = 66;
/** Pixels of an hour, whatever the day: one of 25 h is longer than the others. */
const OF_HOUR = 30;
const ROW = { height: 18, gap: 10 };
/** Between a row and the line over or under it, px. */
const BESIDE = 3;
/** No gap is drawn thinner, px. */
const THINNEST = 3;
const SAID = 250;
const SMALL = 11;
/** Older ones are counted in words alone. */
const MOST_DAYS = 62;
export const recordingTime: DrawingKind = {
  kind: 'recording',
  title: 'Recording in time',
  summary: 'what is on the disk of it, day by day, and what is missing (reads the volume, as `audit recordings` does)',
  measured: {
    from: 'recordings',
    needed: true,
    has: ({ recordings }, subject) => recordings?.looked.some(({ recording }) => recording.name === subject) === true,
  },
  subjects: ({ site }) => site.recordings.map(({ name }) => name),
  draw(plan, subject, { measured }) {
    const looked = measured?.recordings?.looked.find(({ recording }) => recording.name === subject);
    if (measured?.recordings === undefined || looked === undefined) throw new Error(`no files of ${subject} were read`);
    return drawn(plan, looked, measured.recordings);
  },
};

function drawn(plan: Plan, looked: Looked, { now }: NonNullable<Measured['recordings']>): Drawing {
  const { recording, course } = looked;
  const zone = plan.site.timezone;
  const isEmpty = course.end === course.first;
  const { gaps, overlaps } = stretchesOf(looked, zone, now);
  const keptFrom = recording.keep === undefined ? -Infinity : now - recording.keep;
  const stopped = course.stopped === undefined ? [] : [{ from: course.stopped, to: now }];
  const missing = [...gaps, ...stopped];
  const held = { from: course.from, to: course.to };
  const all = isEmpty ? [] : daysBetween(zone, course.from, Math.max(course.to, stopped[0]?.to ?? 0));
  const shown = all.slice(-MOST_DAYS);
  const longest = Math.max(24 * HOUR, ...shown.map(({ from, to }) => to - from));
  const across = (longest / HOUR) * OF_HOUR;
  const width = MARGIN + LEFT + across + 12 + SAID + MARGIN;
  const lost = course.folds.reduce((sum, fold) => sum + fold.lost, 0);
  const said = isEmpty
    ? 'there is no file of it'
    : [
        `${looked.time(course.from).slice(0, 16)} to ${looked.time(course.to).slice(0, 16)}`,
        missingWords(course.gaps.count, course.gaps.total),
        ...(course.overlaps.count === 0 ? [] : [overlapWords(course.overlaps.count, course.overlaps.total)]),
        ...(lost === 0 ? [] : [`${duration(lost)} of a repeated hour missing`]),
        ...(course.stopped === undefined ? [] : [`▲ nothing since ${looked.time(course.stopped).slice(0, 16)}`]),
      ].join(' · ');
  const keep =
    recording.keep === undefined
      ? ''
      : ` Kept for ${daysWords(recording.keep / DAY)} by the plan, from ${looked.time(keptFrom).slice(0, 16)} on; dashed below: older.`;
  const older = all.length - shown.length;
  return {
    title: `Recording ${recording.name}`,
    description:
      `${recording.name}: ${said}.${keep} The clock is that of ${zone ?? 'UTC'}. Of files only the names are read, so what is ` +
      `missing within a file does not show.${older > 0 ? ` The ${count(older, 'day')} before are not drawn.` : ''}`,
    width,
    height: TOP + Math.max(1, shown.length) * (ROW.height + ROW.gap) + MARGIN,
    marks: [
      {
        mark: 'thing',
        at: recordingNamed(recording.name),
        role: 'recording',
        label: `${recording.name}: ${said}`,
        marks: [
          words(`${recording.name} · ${said}`, MARGIN, 28, { size: 14, strong: true, maxWidth: width - 2 * MARGIN }),
        ],
      },
      ...(shown.length === 0 ? [] : hourMarks()),
      ...shown.flatMap((day, index) =>
        dayMarks(day, { held, missing, overlaps, keptFrom }, TOP + index * (ROW.height + ROW.gap)),
      ),
    ],
    tables: [
      wholeTable(plan, looked, said),
      daysTable(recording.name, all, { held, missing: gaps, overlaps, keptFrom }),
      stretchesTable(looked, gaps, 'gap'),
      stretchesTable(looked, overlaps, 'overlap'),
    ].filter(({ rows }) => rows.length > 0),
  };
}

/** Of a day of 24 h. */
function hourMarks(): Mark[] {
  return [0, 3, 6, 9, 12, 15, 18, 21, 24].map((hour) =>
    words(`${String(hour).padStart(2, '0')}:00`, MARGIN + LEFT + hour * OF_HOUR, TOP - 10, {
      anchor: 'middle',
      size: SMALL,
      look: 'quiet',
    }),
  );
}

function dayMarks(day: LocalDay, { held, missing, overlaps, keptFrom }: Course, y: number): Mark[] {
  const left = MARGIN + LEFT;
  const at = (instant: number): number => left + ((instant - day.from) / HOUR) * OF_HOUR;
  const wide = at(day.to) - left;
  const own = missing.flatMap((gap) => within(gap, day));
  const total = lengthOf(own);
  const [begin, end] = [Math.max(held.from, day.from), Math.min(held.to, day.to)];
  const recorded: Mark[] =
    end > begin
      ? [
          {
            mark: 'box',
            x: at(begin),
            y,
            width: Math.max(THINNEST, at(end) - at(begin)),
            height: ROW.height,
            look: 'main',
          },
        ]
      : [];
  const isShort = begin > day.from || end < day.to;
  const outside: Mark[] = isShort ? [{ mark: 'box', x: left, y, width: wide, height: ROW.height, look: 'idle' }] : [];
  const twice = overlaps.flatMap((overlap) => within(overlap, day));
  const beside = (from: number, to: number, at: number, look: Look): Mark => ({
    mark: 'line',
    points: [
      { x: left + from, y: at },
      { x: left + to, y: at },
    ],
    look,
  });
  const old = at(Math.min(end, keptFrom)) - at(begin);
  const text = [
    own.length === 0 ? '' : `▲ ${missingWords(own.length, total)}`,
    twice.length === 0 ? '' : overlapWords(twice.length, lengthOf(twice)),
    ageWords({ from: begin, to: end }, keptFrom),
    day.change,
  ].filter((part) => part !== '');
  return [
    words(day.date, left - 8, y + 13, { anchor: 'end', size: SMALL }),
    ...outside,
    ...recorded,
    ...columnsOf(own, day).map((column): Mark => ({
      mark: 'box',
      ...column,
      x: left + column.x,
      y,
      height: ROW.height,
      look: 'bad',
    })),
    ...columnsOf(twice, day).map(({ x, width }) => beside(x, x + width, y - BESIDE, 'warn')),
    ...(old > 0 ? [beside(at(begin) - left, at(begin) - left + old, y + ROW.height + BESIDE, 'idle')] : []),
    words(text.join(' · '), left + wide + 12, y + 13, {
      size: SMALL,
      maxWidth: SAID - (wide - 24 * OF_HOUR),
      look: own.length === 0 ? 'quiet' : 'bad',
    }),
  ].filter((mark) => mark.mark !== 'words' || mark.text !== '');
}

/** In columns of the least width: those with a gap in them, neighbours together; px from the beginning of the day. */
export function columnsOf(gaps: readonly TimeSpan[], day: TimeSpan): { x: number; width: number }[] {
  const column = (THINNEST * HOUR) / OF_HOUR;
  const last = Math.ceil((day.to - day.from) / column) - 1;
  const runs: { first: number; last: number }[] = [];
  for (const { from, to } of gaps) {
    const first = Math.min(last, Math.floor((from - day.from) / column));
    const end = Math.min(last, Math.max(first, Math.ceil((to - day.from) / column) - 1));
    const run = runs.at(-1);
    if (run !== undefined && first <= run.last + 1) run.last = Math.max(run.last, end);
    else runs.push({ first, last: end });
  }
  return runs.map((run) => ({ x: run.first * THINNEST, width: (run.last - run.first + 1) * THINNEST }));
}
