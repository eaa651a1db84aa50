/** What a picture of a recording shows, as tables. */

import type { Looked } from '../../audit/recordings/looked.ts';
import type { Plan } from '../../plan.ts';
import { recordingAnswer } from '../../report/answer/storage.ts';
import { HOUR } from '../../standards/time-units.ts';
import { bitRate, duration } from '../../text/words.ts';
import type { Name, Row, Table } from '../drawing.ts';
import type { LocalDay } from './local-days.ts';
import { type TimeSpan, ageWords, lengthOf, missingWords, overlapWords, within } from './spans.ts';

const MOST_LISTED = 200;

export function recordingNamed(name: string): Name {
  return { names: 'recordings', name };
}

/** What is there of a recording. */
export interface Course {
  readonly held: TimeSpan;
  readonly missing: readonly TimeSpan[];
  readonly overlaps: readonly TimeSpan[];
  /** What is older is to be deleted by the plan. */
  readonly keptFrom: number;
}

export function wholeTable(plan: Plan, { recording, course, rows, expected }: Looked, said: string): Table {
  const figures = plan.storage.of(recording);
  return {
    title: 'The whole',
    head: ['Recording', 'Files', 'Recorded', 'Missing', 'Measured', 'Declared', 'Remark'],
    rows: [
      {
        things: [recordingNamed(recording.name)],
        cells: [
          { names: [recordingNamed(recording.name)] },
          { figure: String(rows.length) },
          { figure: expected === undefined ? '?' : duration(course.recorded) },
          { figure: missingWords(course.gaps.count, course.gaps.total) },
          { figure: course.rate === undefined ? '?' : bitRate(course.rate.mean) },
          { figure: figures.rate.nominal === 0 ? '?' : bitRate(figures.rate.nominal) },
          `${said}. Planned: ${recordingAnswer(plan, figures)}`,
        ],
      },
    ],
  };
}

export function daysTable(
  name: string,
  all: readonly LocalDay[],
  { held, missing: gaps, overlaps, keptFrom }: Course,
): Table {
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
        things: [recordingNamed(name)],
        cells: [
          day.date,
          { figure: String(Number(((day.to - day.from) / HOUR).toFixed(2))) },
          { figure: recorded > 0 ? duration(recorded) : 'nothing' },
          { figure: String(own.length) },
          { figure: own.length === 0 ? '' : duration(missing) },
          remark.filter((part) => part !== '').join(' · '),
        ],
      };
    }),
  };
}

/** The longest come first where there are many. */
export function stretchesTable(
  { recording, time, course }: Looked,
  all: readonly TimeSpan[],
  what: 'gap' | 'overlap',
): Table {
  const most =
    all.length <= MOST_LISTED ? all : [...all].sort((a, b) => b.to - b.from - (a.to - a.from)).slice(0, MOST_LISTED);
  const total = what === 'gap' ? course.gaps.count : course.overlaps.count;
  const title = what === 'gap' ? 'Gaps' : 'Overlaps';
  return {
    title: most.length === all.length ? title : `The longest of ${total} ${title.toLowerCase()}`,
    head: ['From', 'To', 'Length'],
    rows: most.map(({ from, to }) => ({
      things: [recordingNamed(recording.name)],
      cells: [time(from), time(to), { figure: duration(to - from) }],
    })),
  };
}
