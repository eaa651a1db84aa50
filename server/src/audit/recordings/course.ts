/**
 * The files of a recording in the order of time: gaps and overlaps, lengths and rates.
 *
 * A name has the time when its file was opened, but not its length. That comes from ffprobe, where it was run, or else
 * from the time when the next file was opened, as far as the plan allows.
 */

import { type Expected, around } from './expected.ts';
import { type RepeatedHour, foldOf } from './fold.ts';
import { median } from './median.ts';
import { type Rate, RateSum } from './rate.ts';
import { PASS, type Rows } from './rows.ts';
import { type Stretch, Stretches } from './stretches.ts';
import type { Surveyed } from './survey.ts';
import { MINUTE } from '../../standards/time-units.ts';

/** Lengths in milliseconds by the time when a file was opened, or `damaged` where it cannot be read. */
export type Lengths = ReadonlyMap<number, number | 'damaged'>;

export interface Course {
  /** The rows with a possible time: from `first` up to, not including, `end`. */
  readonly first: number;
  readonly end: number;
  readonly bytes: number;
  /** When the oldest file was opened, and when the newest ends or will end. */
  readonly from: number;
  readonly to: number;
  /** The total length of the files, in milliseconds. */
  readonly recorded: number;
  /** The median time from one file to the next; `undefined` where there are too few files. */
  readonly typical: number | undefined;
  /** Whether files are of another length than planned. */
  readonly otherLength: boolean;
  readonly gaps: Stretches;
  readonly shorts: Stretches;
  readonly overlaps: Stretches;
  readonly empties: Stretches;
  readonly damaged: Stretches;
  readonly future: Stretches;
  readonly unset: Stretches;
  readonly folds: readonly RepeatedHour[];
  readonly rate: Rate | undefined;
  /** Since when no file has been opened. */
  readonly stopped: number | undefined;
  /** Opening times of files whose true lengths would clarify a finding. Not all, where there are many. */
  readonly doubtful: readonly number[];
}

/** Allowance for differing clocks and a restarting recorder (common practice, no source). */
const SLACK = MINUTE;
/** 2000-01-01: earlier names come from a clock that had not been set (common practice, no source). */
const CLOCK_SET = 946_684_800_000;
/** Fewer files do not show their usual length. */
const FEW = 5;
const MOST_DOUBTFUL = 10_000;

/** @param each takes each gap and each overlap, in order */
export function courseOf(
  { rows, expected, rounding = 0 }: Surveyed,
  zone: string | undefined,
  now: number,
  lengths: Lengths,
  each?: { readonly gap: (gap: Stretch) => void; readonly overlap: (overlap: Stretch) => void },
): Course {
  const [first, end] = [rows.before(CLOCK_SET), rows.before(now + SLACK)];
  const after = (index: number): number => rows.start(index + 1) - rows.start(index);
  const typical = end - first < FEW ? undefined : median(first, end - 1, after);
  const otherLength =
    expected !== undefined && typical !== undefined && !someFit(first, end - 1, after, expected, rounding);
  const held =
    otherLength && typical !== undefined
      ? { ...expected, ...around(typical, expected.most - expected.usual) }
      : expected;
  const fold =
    zone !== undefined && rows.pass(end - 1) === PASS.undecided ? foldOf(zone, rows.start(end - 1)) : undefined;
  // The later of two possible times.
  const last = rows.start(end - 1) + (fold === undefined ? 0 : fold.to - fold.change);
  const reach = (held?.most ?? 0) + rounding + SLACK;
  const scan = new CourseBuilder(rows, held, rounding, zone, lengths);
  if (each !== undefined) [scan.gaps.each, scan.overlaps.each] = [each.gap, each.overlap];
  for (let index = first; index < end; index++) scan.take(index);
  scan.finish();
  const stretches = (from: number, to: number): Stretches => {
    const found = new Stretches();
    for (let index = from; index < to; index++) found.add({ index, from: rows.start(index), to: rows.start(index) });
    return found;
  };
  const from = rows.start(first);
  const to = Math.min(last + (lengthIn(lengths, last) ?? held?.usual ?? 0), Math.max(now, last));
  const { gaps, shorts, overlaps, empties, damaged, folds, bytes, rate, doubtful } = scan;
  return {
    first,
    end,
    bytes,
    from,
    to,
    typical,
    otherLength,
    gaps,
    shorts,
    overlaps,
    damaged,
    folds,
    doubtful,
    // The newest file is empty until the recorder first writes to it.
    empties: empties.last?.index === end - 1 && now - last <= reach ? empties.withoutLast() : empties,
    recorded: end === first ? 0 : to - from - gaps.total - folds.reduce((sum, { lost }) => sum + lost, 0),
    future: stretches(end, rows.length),
    unset: stretches(0, first),
    rate: rate.end(),
    stopped: held !== undefined && end > first && now - last > reach ? Math.min(last + held.usual, now) : undefined,
  };
}

/** Whether at least a quarter of the times from file to file are as planned: the others are then gaps or restarts. */
function someFit(
  first: number,
  end: number,
  after: (index: number) => number,
  { least, most }: Expected,
  rounding: number,
): boolean {
  let fitting = 0;
  for (let index = first; index < end; index++) {
    const time = after(index);
    if (time >= least - rounding && time <= most + rounding) fitting++;
  }
  return fitting >= (end - first) / 4;
}

interface Before {
  readonly index: number;
  readonly start: number;
  readonly isFile: boolean;
  /** Whether nothing was recorded just before: a recorder that cuts by the clock begins with a shorter file. */
  readonly isFirst: boolean;
}

/** Goes from file to file. */
class CourseBuilder {
  readonly gaps = new Stretches();
  readonly shorts = new Stretches();
  readonly overlaps = new Stretches();
  readonly empties = new Stretches();
  readonly damaged = new Stretches();
  readonly folds: RepeatedHour[] = [];
  readonly doubtful: number[] = [];
  readonly rate: RateSum;
  bytes = 0;
  /** The file before; after a repeated hour with ambiguous files, the end of that hour. */
  private before: Before | undefined;
  private fold: RepeatedHour | undefined;
  private readonly rows: Rows;
  private readonly held: Expected | undefined;
  private readonly rounding: number;
  private readonly zone: string | undefined;
  private readonly lengths: Lengths;

  constructor(rows: Rows, held: Expected | undefined, rounding: number, zone: string | undefined, lengths: Lengths) {
    [this.rows, this.held, this.rounding, this.zone, this.lengths] = [rows, held, rounding, zone, lengths];
    this.rate = new RateSum(rounding);
  }

  take(index: number): void {
    const start = this.rows.start(index);
    const size = this.rows.size(index);
    this.bytes += size;
    if (size === 0) this.empties.add({ index, from: start, to: start });
    if (this.lengths.get(start) === 'damaged') this.damaged.add({ index, from: start, to: start });
    const { fold, held } = this;
    if (fold !== undefined && start >= fold.to) this.leave(fold, this.before !== undefined);
    if (this.fold === undefined && this.rows.pass(index) === PASS.undecided) this.fold = this.foldAt(start);
    if (this.fold !== undefined) {
      this.fold.files++;
      return;
    }
    const follows = this.before !== undefined && held !== undefined && this.judge(this.before, index, start, held);
    this.before = { index, start, isFile: true, isFirst: !follows };
  }

  finish(): void {
    if (this.fold !== undefined) this.leave(this.fold, false);
  }

  /** Begins a repeated hour whose files could be of either pass. */
  private foldAt(start: number): RepeatedHour | undefined {
    const fold = this.zone === undefined ? undefined : foldOf(this.zone, start);
    if (fold === undefined) return undefined;
    this.rate.interrupt();
    const { before, held } = this;
    if (before !== undefined && held !== undefined && fold.from - before.start > held.most + this.rounding)
      this.gaps.add({ index: before.index, from: before.start + held.usual, to: fold.from });
    // Its unambiguous files come before the ambiguous ones.
    for (let index = this.rows.before(fold.from); this.rows.start(index) < start; index++) fold.files++;
    return fold;
  }

  /** @param whole whether there are files before it and after it, so that the whole hour should be recorded */
  private leave(fold: RepeatedHour, whole: boolean): void {
    const { held } = this;
    const missing = held === undefined || !whole ? 0 : fold.to - fold.from - fold.files * held.usual;
    if (held !== undefined && missing > 2 * held.most + this.rounding) fold.lost = missing;
    this.folds.push(fold);
    this.before = { index: this.rows.before(fold.to) - 1, start: fold.to, isFile: false, isFirst: false };
    this.fold = undefined;
  }

  /** Judges the time between the file before and this one. @returns whether there is no gap */
  private judge(before: Before, index: number, start: number, held: Expected): boolean {
    const { rounding } = this;
    const time = start - before.start;
    const known = before.isFile ? lengthIn(this.lengths, before.start) : undefined;
    const length = before.isFile ? (known ?? Math.min(time, held.usual)) : 0;
    const gap = known === undefined ? time > held.most + rounding : time - known > rounding;
    if (gap) this.gap(before.index, index, before.start + length, start);
    if (!before.isFile) return !gap;
    const whole = known === undefined ? time >= held.least - rounding : known >= held.least - rounding;
    // The first file also holds the packets that the recorder read before it opened the file.
    const backlog = before.isFirst ? held.backlog : 0;
    const twice =
      known === undefined
        ? !whole && this.looksLonger(before.index, time + backlog, held)
        : known - time > rounding + backlog;
    if (twice) this.overlaps.add({ index: before.index, from: start, to: before.start + (known ?? held.usual) });
    else if (!whole && !before.isFirst)
      this.shorts.add({ index: before.index, from: before.start, to: before.start + length });
    if (gap || twice || !whole) this.doubt(before.start, index);
    if (whole && !gap && !twice) this.rate.add(this.rows.size(before.index), known ?? time);
    else this.rate.interrupt();
    return !gap;
  }

  private gap(before: number, index: number, from: number, to: number): void {
    const { zone, rows, held, rounding } = this;
    const fold = zone !== undefined && rows.pass(index) !== PASS.only ? foldOf(zone, rows.start(index)) : undefined;
    const end = (held?.most ?? 0) + rounding;
    const again = fold === undefined ? 0 : fold.to - fold.change;
    // Files of the second pass with the names of the missing files have overwritten these.
    const namesakes = rows.before(to + again) - rows.before(Math.max(from, fold?.from ?? 0) + again);
    if (fold !== undefined && from < fold.change && to - fold.change <= end && namesakes > 0) {
      const earlier = Math.max(from, fold.from);
      this.folds.push({ ...fold, files: 0, lost: to - earlier, overwritten: true });
      if (earlier - from <= end) return;
      this.gaps.add({ index: before, from, to: earlier });
    } else this.gaps.add({ index: before, from, to });
  }

  /** Whether its bytes, at the rate of the files before, last beyond the start of the next file. */
  private looksLonger(index: number, time: number, held: Expected): boolean {
    const { recent } = this.rate;
    if (recent === undefined) return false;
    const length = (this.rows.size(index) * 8000) / recent;
    return length - time > Math.max(this.rounding, held.usual / 3);
  }

  private doubt(start: number, next: number): void {
    if (this.doubtful.length < MOST_DOUBTFUL) this.doubtful.push(start, this.rows.start(next));
  }
}

function lengthIn(lengths: Lengths, start: number): number | undefined {
  const length = lengths.get(start);
  return length === 'damaged' ? undefined : length;
}
