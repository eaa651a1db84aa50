/** A recording in time, as its files on the disk have it: a row for each day of the site's clock, gaps never too thin to see. */

import { type Looked, stretchesOf } from '../audit/recordings/looked.ts';
import type { Plan } from '../plan.ts';
import { recordingAnswer } from '../report/answer/storage.ts';
import { DAY, HOUR, MINUTE, SECOND } from '../standards/time-units.ts';
import { LocalTimes, localTime, zonedTime } from '../standards/time-zone.ts';
import { bitRate, count, days as daysWords } from '../text/words.ts';
import type { Drawing, Kind, Look, Mark, Measured, Name, Row, Table } from './drawing.ts';
import { words } from './words.ts';

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
const MOST_LISTED = 200;

export const recordingTime: Kind = {
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

/** A stretch of time, ms since 1970. */
interface Span {
  readonly from: number;
  readonly to: number;
}

interface LocalDay extends Span {
  /** `2026-10-25` */
  readonly date: string;
  /** `25 h: 01:00 to 02:00 twice`; empty for most. */
  readonly change: string;
}

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
        ...(lost === 0 ? [] : [`${lengthWords(lost)} of a repeated hour missing`]),
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
        at: recordingAt(recording.name),
        role: 'recording',
        label: `${recording.name}: ${said}`,
        marks: [words(`${recording.name} · ${said}`, MARGIN, 28, { size: 14, strong: true, most: width - 2 * MARGIN })],
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

function recordingAt(name: string): Name {
  return { names: 'recordings', name };
}

/** `3 gaps, 1 min 12 s` */
function missingWords(gaps: number, total: number): string {
  return gaps === 0 ? 'no gap' : `${count(gaps, 'gap')}, ${lengthWords(total)}`;
}

function overlapWords(overlaps: number, total: number): string {
  return `△ ${count(overlaps, 'overlap')}, ${lengthWords(total)} twice`;
}

/** `2 d 3 h`, `1 min 12 s`: the two largest units; below a second in milliseconds. */
export function lengthWords(milliseconds: number): string {
  const seconds = Math.round(milliseconds / SECOND);
  if (seconds === 0) return `${Math.round(milliseconds)} ms`;
  const units: readonly (readonly [string, number])[] = [
    ['d', DAY / SECOND],
    ['h', HOUR / SECOND],
    ['min', MINUTE / SECOND],
    ['s', 1],
  ];
  let left = seconds;
  const parts = units.flatMap(([unit, of]) => {
    const whole = Math.floor(left / of);
    left -= whole * of;
    return whole === 0 ? [] : [`${whole} ${unit}`];
  });
  return parts.slice(0, 2).join(' ');
}

/** Days of the clock, as long as they are: 23, 24 or 25 h where clocks are put by an hour. */
export function daysBetween(zone: string | undefined, from: number, to: number): LocalDay[] {
  const own = zone ?? 'UTC';
  const times = new LocalTimes(own);
  const { year, month, day } = zonedTime(own, from);
  const found: LocalDay[] = [];
  // Midnights as the clock has them: a day later it shows the next, however long that was.
  let local = localTime({ year, month, day }) ?? 0;
  for (let start = times.firstAtOrAfter(local); start < to || found.length === 0;) {
    const end = times.firstAtOrAfter(local + DAY);
    found.push({
      date: new Date(local).toISOString().slice(0, 10),
      from: start,
      to: end,
      change: changeWords(own, start, end),
    });
    [local, start] = [local + DAY, end];
  }
  return found;
}

function changeWords(zone: string, from: number, to: number): string {
  const hours = (to - from) / HOUR;
  const change = zonedTime(zone, from).getTimeZoneTransition('next');
  if (hours === 24 || change === null || change.epochMilliseconds >= to) return '';
  const shown = (instant: number, minutes: number): string =>
    zonedTime(zone, instant).toPlainTime().add({ minutes }).toString().slice(0, 5);
  const was = shown(change.epochMilliseconds - MINUTE, 1);
  const is = shown(change.epochMilliseconds, 0);
  return `${Number(hours.toFixed(1))} h: ${hours > 24 ? `${is} to ${was} twice` : `no ${was} to ${is}`}`;
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

/** What is there of a recording. */
interface Course {
  readonly held: Span;
  readonly missing: readonly Span[];
  readonly overlaps: readonly Span[];
  /** What is older is to be deleted by the plan. */
  readonly keptFrom: number;
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
      most: SAID - (wide - 24 * OF_HOUR),
      look: own.length === 0 ? 'quiet' : 'bad',
    }),
  ].filter((mark) => mark.mark !== 'words' || mark.text !== '');
}

/** Of what is there of a day. */
function ageWords({ from, to }: Span, keptFrom: number): string {
  if (to <= from || keptFrom <= from) return '';
  return keptFrom >= to ? 'older than it is kept' : 'partly older than it is kept';
}

function lengthOf(spans: readonly Span[]): number {
  return spans.reduce((sum, { from, to }) => sum + to - from, 0);
}

function within({ from, to }: Span, day: Span): Span[] {
  return from < day.to && to > day.from ? [{ from: Math.max(from, day.from), to: Math.min(to, day.to) }] : [];
}

/** In columns of the least width: those with a gap in them, neighbours together; px from the beginning of the day. */
export function columnsOf(gaps: readonly Span[], day: Span): { x: number; width: number }[] {
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

function wholeTable(plan: Plan, { recording, course, rows, expected }: Looked, said: string): Table {
  const figures = plan.storage.of(recording);
  return {
    title: 'The whole',
    head: ['Recording', 'Files', 'Recorded', 'Missing', 'Measured', 'Declared', 'Remark'],
    rows: [
      {
        about: [recordingAt(recording.name)],
        cells: [
          { names: [recordingAt(recording.name)] },
          { figure: String(rows.length) },
          { figure: expected === undefined ? '?' : lengthWords(course.recorded) },
          { figure: missingWords(course.gaps.count, course.gaps.total) },
          { figure: course.rate === undefined ? '?' : bitRate(course.rate.mean) },
          { figure: figures.rate.nominal === 0 ? '?' : bitRate(figures.rate.nominal) },
          `${said}. Planned: ${recordingAnswer(plan, figures)}`,
        ],
      },
    ],
  };
}

function daysTable(name: string, all: readonly LocalDay[], { held, missing: gaps, overlaps, keptFrom }: Course): Table {
  return {
    title: 'By day',
    head: ['Day', 'Hours', 'Recorded', 'Gaps', 'Missing', 'Remark'],
    rows: all.map((day): Row => {
      const own = gaps.flatMap((gap) => within(gap, day));
      const missing = lengthOf(own);
      const there = { from: Math.max(held.from, day.from), to: Math.min(held.to, day.to) };
      const recorded = there.to - there.from - missing;
      const twice = overlaps.flatMap((overlap) => within(overlap, day));
      const remark = [
        twice.length === 0 ? '' : overlapWords(twice.length, lengthOf(twice)),
        ageWords(there, keptFrom),
        day.change,
      ];
      return {
        about: [recordingAt(name)],
        cells: [
          day.date,
          { figure: String(Number(((day.to - day.from) / HOUR).toFixed(2))) },
          { figure: recorded > 0 ? lengthWords(recorded) : 'nothing' },
          { figure: String(own.length) },
          { figure: own.length === 0 ? '' : lengthWords(missing) },
          remark.filter((part) => part !== '').join(' · '),
        ],
      };
    }),
  };
}

/** The longest come first where there are many. */
function stretchesTable({ recording, time, course }: Looked, all: readonly Span[], what: 'gap' | 'overlap'): Table {
  const most =
    all.length <= MOST_LISTED ? all : [...all].sort((a, b) => b.to - b.from - (a.to - a.from)).slice(0, MOST_LISTED);
  const total = what === 'gap' ? course.gaps.count : course.overlaps.count;
  const title = what === 'gap' ? 'Gaps' : 'Overlaps';
  return {
    title: most.length === all.length ? title : `The longest of ${total} ${title.toLowerCase()}`,
    head: ['From', 'To', 'Length'],
    rows: most.map(({ from, to }) => ({
      about: [recordingAt(recording.name)],
      cells: [time(from), time(to), { figure: lengthWords(to - from) }],
    })),
  };
}
