/** Days of the clock of a site: of 23, 24 or 25 h. */

import { DAY, HOUR, MINUTE } from '../../standards/time-units.ts';
import { LocalTimes, localTime, zonedTime } from '../../standards/time-zone.ts';
import type { TimeSpan } from './spans.ts';

export interface LocalDay extends TimeSpan {
  /** `2026-10-25` */
  readonly date: string;
  /** `25 h: 01:00 to 02:00 twice`; empty for most. */
  readonly change: string;
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
