/**
 * Civil time read backwards: which instants a clock on the wall can have meant. Kept by year, for millions of questions.
 *
 * Source: the IANA time-zone database, as the JavaScript engine has it (ECMA-402). Instants are milliseconds since
 * 1970-01-01T00:00Z. A local time is given as the instant at which a clock of UTC shows the same, by `localTime`.
 */

import { offsetMinutes } from './time-zone.ts';

const SECOND = 1000;
const MINUTE = 60 * SECOND;
const DAY = 86_400_000;
/** Shorter than any two changes of one zone lie apart since 1970: 6 days 23 h, in Brazil in 2000 (zoneinfo, zdump). */
const STEP = 6 * DAY;
/** More than clocks differ from UTC or are ever set by: a day, in Samoa in 2011 (zoneinfo). */
const MARGIN = 2 * DAY;

/** From `start` up to `end`, clocks are `offset` ahead of UTC; all in milliseconds. */
interface Span {
  readonly start: number;
  readonly end: number;
  readonly offset: number;
}

/** The local time as a number; `undefined` where the calendar has no such day or the clock no such time. */
export function localTime(
  year: number,
  month: number,
  day: number,
  hour: number,
  minute: number,
  second: number,
): number | undefined {
  if (month < 1 || month > 12 || day < 1 || hour > 23 || minute > 59 || second >= 60) return undefined;
  // Date.UTC takes the years 0 to 99 for those of the 1900s.
  const midnight = year > 99 ? Date.UTC(year, month - 1, day) : new Date(0).setUTCFullYear(year, month - 1, day);
  // The 31st of a month of 30 days has become the 1st of the next.
  if (day > 28 && new Date(midnight).getUTCDate() !== day) return undefined;
  return midnight + hour * 60 * MINUTE + minute * MINUTE + second * SECOND;
}

export class LocalTimes {
  private readonly zone: string;
  private readonly years = new Map<number, readonly Span[]>();
  /** Local times between which nothing is repeated or skipped: most questions fall where the last one fell. */
  private plainFrom = Infinity;
  private plainTo = -Infinity;
  private plainOffset = 0;

  /** @throws RangeError if there is no such zone */
  constructor(zone: string) {
    this.zone = zone;
    offsetMinutes(zone, 0);
  }

  /** In order: one; two where the clocks went back and showed the time again; none where they skipped it. */
  instants(local: number): number[] {
    if (local >= this.plainFrom && local < this.plainTo) return [local - this.plainOffset];
    const year = new Date(local).getUTCFullYear();
    const spans = this.spans(year);
    const meant = spans.filter(({ start, end, offset }) => local >= start + offset && local < end + offset);
    const [only] = meant;
    if (only !== undefined && meant.length === 1) {
      const others = spans.filter((span) => span !== only);
      const starts = others.map(({ start, offset }) => start + offset).filter((start) => start > local);
      const ends = others.map(({ end, offset }) => end + offset).filter((end) => end <= local);
      this.plainFrom = Math.max(startOf(year), only.start + only.offset, ...ends);
      this.plainTo = Math.min(startOf(year + 1), only.end + only.offset, ...starts);
      this.plainOffset = only.offset;
    }
    return meant.map(({ offset }) => local - offset);
  }

  /** The first instant at which clocks show this time or a later one: for the start of a day whose midnight is skipped. */
  firstAtOrAfter(local: number): number {
    const [first] = this.instants(local);
    if (first !== undefined) return first;
    const spans = this.spans(new Date(local).getUTCFullYear());
    return spans.find(({ start, offset }) => start + offset > local)?.start ?? local;
  }

  /** What the offset from UTC is at the instant, in milliseconds. */
  offsetAt(instant: number): number {
    const spans = this.spans(new Date(instant).getUTCFullYear());
    return spans.find(({ start, end }) => instant >= start && instant < end)?.offset ?? 0;
  }

  /** All that matter to local times in the year, in order. */
  private spans(year: number): readonly Span[] {
    const kept = this.years.get(year);
    if (kept !== undefined) return kept;
    const last = startOf(year + 1) + MARGIN;
    const spans: Span[] = [];
    let start = startOf(year) - MARGIN;
    let offset = this.asked(start);
    for (let at = start; at < last; at += STEP) {
      const next = Math.min(at + STEP, last);
      const then = this.asked(next);
      if (then === offset) continue;
      const change = this.changeWithin(at, next, offset);
      spans.push({ start, end: change, offset });
      start = change;
      offset = then;
    }
    spans.push({ start, end: last, offset });
    this.years.set(year, spans);
    return spans;
  }

  /** The first whole second in (earlier, later] at which the offset is no longer `before`. */
  private changeWithin(earlier: number, later: number, before: number): number {
    let [low, high] = [earlier / SECOND, later / SECOND];
    while (high - low > 1) {
      const middle = Math.floor((low + high) / 2);
      if (this.asked(middle * SECOND) === before) low = middle;
      else high = middle;
    }
    return high * SECOND;
  }

  private asked(instant: number): number {
    return Math.round(offsetMinutes(this.zone, instant) * MINUTE);
  }
}

function startOf(year: number): number {
  return new Date(0).setUTCFullYear(year, 0, 1);
}
