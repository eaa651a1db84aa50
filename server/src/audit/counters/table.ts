/** The measured and planned rates, port by port, as a table for the user. */

import { columns } from '../../report/columns.ts';
import { bitRate, duration } from '../../text/words.ts';
import type { Options, Row } from './compare.ts';

const WORDS: Readonly<Record<Row['verdict'], string>> = {
  'above-peak': '← above the peak',
  'above': '← more than planned',
  'below': '← less than planned',
  'agrees': '',
  'unknown': 'not known',
};

export function tableOf(rows: readonly Row[], { over }: Options): string[] {
  if (rows.length === 0) return [];
  const lines = [
    ['port', 'planned', 'peak', 'measured', `busiest ${duration(over)}`, 'difference', ''],
    ...rows.map(({ title, planned, flow, difference, verdict }) => {
      const known = flow.milliseconds > 0;
      const whole = Math.round(difference);
      const sign = whole > 0 ? '+' : whole < 0 ? '−' : '';
      return [
        title,
        bitRate(planned.nominal),
        bitRate(planned.peak),
        known ? bitRate(flow.mean) : '',
        known ? bitRate(flow.busiest) : '',
        known ? `${sign}${bitRate(Math.abs(whole))}` : '',
        WORDS[verdict],
      ];
    }),
  ];
  return columns(lines, ['left', 'right', 'right', 'right', 'right', 'right', 'left']);
}
