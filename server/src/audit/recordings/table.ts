/** The readings of each recording, as a table for the user. */

import type { Plan } from '../../plan.ts';
import { columns } from '../../report/columns.ts';
import { bitRate, bytes, duration } from '../../text/words.ts';
import { ageWords } from './kept.ts';
import type { Looked } from './looked.ts';
import { MINUTE, SECOND } from '../../standards/time-units.ts';

export function tableOf(plan: Plan, looked: readonly Looked[], now: number): string[] {
  if (looked.length === 0) return [];
  const rows = looked.map(({ recording, rows: files, untold, expected, course, time }) => {
    const { first, end, from, to, recorded, gaps, rate } = course;
    const declared = plan.storage.of(recording).rate.nominal;
    const some = end > first;
    const known = some && expected !== undefined;
    return [
      recording.name,
      String(files.length + untold.count),
      bytes(course.bytes + untold.bytes),
      some ? time(from) : '',
      some ? time(to) : '',
      known ? duration(Math.round(recorded / MINUTE) * MINUTE || Math.round(recorded / SECOND) * SECOND) : '',
      known ? String(gaps.count) : '',
      some ? ageWords(now - from) : '',
      rate === undefined ? '' : bitRate(rate.mean),
      declared === 0 ? '' : bitRate(declared),
    ];
  });
  const head = ['recording', 'files', 'size', 'from', 'to', 'length', 'gaps', 'kept', 'measured', 'declared'];
  return columns(
    [head, ...rows],
    ['left', 'right', 'right', 'left', 'left', 'right', 'right', 'right', 'right', 'right'],
  );
}
