/**
 * Reads the names of a recording's files: from the path of a file, the time at which it was opened.
 *
 * FFmpeg's segment muxer makes the name by localtime(3) and strftime(3) when it opens a file. So a name has a time of
 * the recorder's zone, rounded down to the last unit of its pattern. It never has a time that the clocks skipped, as
 * localtime shows none: such a name comes from a machine in another zone, or was given by hand.
 */

import { LocalTimes } from '../standards/time-zone.ts';
import { type TimeUnit, repeatsEvery, resolution } from '../standards/strftime.ts';
import { DAY_OF_MINUTES, matchName } from './name-match.ts';
import { FIELD, FIELD_COUNT, type NameStep, stepsOf } from './name-steps.ts';
import { type NameFields, agrees, datesOf } from './named-date.ts';
import { SECOND, MINUTE, HOUR } from '../standards/time-units.ts';

export interface NamedTime {
  /**
   * Milliseconds since 1970, in order. Usually one. Two where the clocks went back and showed the time again, and the
   * name has no offset. None where the clocks skipped the time.
   */
  readonly instants: readonly number[];
  /** Minutes east of UTC, where the name has it. */
  readonly offset: number | undefined;
}

export interface FileNames {
  readonly pattern: string;
  /** The folders that all names start with, such as `paddock/`, or nothing. */
  readonly folder: string;
  /** How many folders deep the files are. */
  readonly depth: number;
  /** The unit that times in names are rounded down to. */
  readonly finest: TimeUnit | 'none';
  /** The same in milliseconds; `undefined` where names have no time of day. */
  readonly roundedTo: number | undefined;
  /** Why names give no instant, as a clause: “they come again every day”. `undefined` where they do. */
  readonly noInstant: string | undefined;
  /** Whether a path, relative to the pattern's root and with forward slashes, is a name of the pattern. */
  matches(path: string): boolean;
  /** `undefined` where the path does not fit the pattern, or names give no instant. */
  read(path: string): NamedTime | undefined;
}

const PRECISIONS: Partial<Record<TimeUnit | 'none', number>> = { second: SECOND, minute: MINUTE, hour: HOUR };

/** How names of a pattern are read. */
interface Reading {
  readonly clock: LocalTimes | undefined;
  /** Names give the day in more than one way, so that they can contradict themselves. */
  readonly isRedundant: boolean;
  readonly hasHour: boolean;
}

/**
 * Prepares a pattern once, to read a million names.
 *
 * @param zone the recorder's time zone; without one, only names with an offset or seconds since 1970 give an instant
 * @throws RangeError if there is no such zone
 */
export function fileNames(pattern: string, zone: string | undefined): FileNames {
  const read = stepsOf(pattern);
  const [steps, unreadable] = 'unreadable' in read ? [undefined, read.unreadable] : [read, undefined];
  const used = new Set(steps?.flatMap(fieldsOf));
  const finest = resolution(pattern);
  const roundedTo = PRECISIONS[finest];
  const noInstant = unreadable ?? incomplete(pattern, finest) ?? zoneless(used, zone);
  const reading: Reading = {
    clock: zone === undefined ? undefined : new LocalTimes(zone),
    isRedundant: isRedundant(used),
    hasHour: roundedTo !== undefined,
  };
  const fields: NameFields = new Float64Array(FIELD_COUNT);
  const matches = (path: string): boolean => steps !== undefined && matchName(steps, path, fields);
  const shape = (steps ?? []).map((step) => (step.kind === 'text' ? step.text : '\0')).join('');
  return {
    pattern,
    folder: shape.slice(0, (shape.split('\0', 1)[0] ?? '').lastIndexOf('/') + 1),
    depth: shape.split('/').length - 1,
    finest,
    roundedTo,
    noInstant,
    matches,
    read: (path) => (noInstant === undefined && matches(path) ? timeOf(fields, reading) : undefined),
  };
}

function timeOf(fields: NameFields, { clock, isRedundant: checked, hasHour }: Reading): NamedTime | undefined {
  const shifted = fields[FIELD.offset] ?? -1;
  const offset = shifted === -1 ? undefined : shifted - DAY_OF_MINUTES;
  const epoch = fields[FIELD.epoch] ?? -1;
  if (epoch !== -1) return { instants: [epoch * SECOND], offset };
  const time = timeOfDay(fields);
  const dates = datesOf(fields);
  const local = (checked ? dates.filter((date) => agrees(date, fields)) : dates).map((date) => date + time);
  if (local.length === 0 || time < 0) return undefined;
  if (offset !== undefined) return { instants: local.map((shown) => shown - offset * MINUTE), offset };
  if (clock === undefined) return undefined;
  return {
    instants: local.flatMap((shown) => (hasHour ? clock.instants(shown) : clock.firstAtOrAfter(shown))),
    offset,
  };
}

/** Milliseconds since midnight on the clock; negative where the name contradicts itself. */
function timeOfDay(fields: NameFields): number {
  const of24 = fields[FIELD.hour] ?? -1;
  const of12 = fields[FIELD.hourOf12] ?? -1;
  const half = fields[FIELD.half] ?? -1;
  const hour = of24 !== -1 ? of24 : of12 === -1 ? 0 : (of12 % 12) + half * 12;
  if ((of12 !== -1 && hour % 12 !== of12 % 12) || (half !== -1 && of12 !== -1 && Math.floor(hour / 12) !== half))
    return -1;
  return ((hour * 60 + Math.max(0, fields[FIELD.minute] ?? 0)) * 60 + Math.max(0, fields[FIELD.second] ?? 0)) * 1000;
}

/** The clause that explains what the names lack to give a time. */
function incomplete(pattern: string, finest: TimeUnit | 'none'): string | undefined {
  if (finest === 'none') return 'they tell no time';
  const cycle = repeatsEvery(pattern);
  return cycle === undefined ? undefined : `they come again every ${cycle}`;
}

function zoneless(used: ReadonlySet<number>, zone: string | undefined): string | undefined {
  if (zone !== undefined || used.has(FIELD.epoch) || used.has(FIELD.offset)) return undefined;
  return 'they have no offset from UTC, and the time zone of the site is not declared';
}

/** Whether names of these fields give the day in more than one way. */
function isRedundant(used: ReadonlySet<number>): boolean {
  const others = [
    FIELD.weekday,
    FIELD.isoWeek,
    FIELD.sundayWeek,
    FIELD.mondayWeek,
    FIELD.weekYear,
    FIELD.weekYearOfCentury,
  ];
  return (
    others.some((field) => used.has(field)) ||
    (used.has(FIELD.dayOfYear) && (used.has(FIELD.month) || used.has(FIELD.day))) ||
    (used.has(FIELD.year) && (used.has(FIELD.century) || used.has(FIELD.yearOfCentury)))
  );
}

function fieldsOf(step: NameStep): number[] {
  if (step.kind === 'number' || step.kind === 'word') return [step.field];
  return step.kind === 'offset' ? [FIELD.offset] : [];
}
