/** Stretches of time of a recording, and their words. */

import { DAY, HOUR, MINUTE, SECOND } from '../../standards/time-units.ts';
import { count } from '../../text/words.ts';

/** A stretch of time, ms since 1970. */
export interface Span {
  readonly from: number;
  readonly to: number;
}

/** `3 gaps, 1 min 12 s` */
export function missingWords(gaps: number, total: number): string {
  return gaps === 0 ? 'no gap' : `${count(gaps, 'gap')}, ${lengthWords(total)}`;
}

export function overlapWords(overlaps: number, total: number): string {
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

/** Of what is there of a day. */
export function ageWords({ from, to }: Span, keptFrom: number): string {
  if (to <= from || keptFrom <= from) return '';
  return keptFrom >= to ? 'older than it is kept' : 'partly older than it is kept';
}

export function lengthOf(spans: readonly Span[]): number {
  return spans.reduce((sum, { from, to }) => sum + to - from, 0);
}

export function within({ from, to }: Span, day: Span): Span[] {
  return from < day.to && to > day.from ? [{ from: Math.max(from, day.from), to: Math.min(to, day.to) }] : [];
}
