/** Stretches of time of a recording, and their words. */

import { count, duration } from '../../text/words.ts';

/** A stretch of time, ms since 1970. */
export interface TimeSpan {
  readonly from: number;
  readonly to: number;
}

/** `3 gaps, 1 min 12 s` */
export function missingWords(gaps: number, total: number): string {
  return gaps === 0 ? 'no gap' : `${count(gaps, 'gap')}, ${duration(total)}`;
}

export function overlapWords(overlaps: number, total: number): string {
  return `△ ${count(overlaps, 'overlap')}, ${duration(total)} twice`;
}

/** Of what is there of a day. */
export function ageWords({ from, to }: TimeSpan, keptFrom: number): string {
  if (to <= from || keptFrom <= from) return '';
  return keptFrom >= to ? 'older than it is kept' : 'partly older than it is kept';
}

export function lengthOf(spans: readonly TimeSpan[]): number {
  return spans.reduce((sum, { from, to }) => sum + to - from, 0);
}

export function within({ from, to }: TimeSpan, day: TimeSpan): TimeSpan[] {
  return from < day.to && to > day.from ? [{ from: Math.max(from, day.from), to: Math.min(to, day.to) }] : [];
}
