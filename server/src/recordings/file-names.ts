/**
 * The names of a recording's files read backwards: from the path of a file to the time at which it was opened.
 *
 * FFmpeg's segment muxer fills the pattern in by localtime(3) and strftime(3) when it opens a file. So a name bears whole
 * units, rounded down, of the recorder's own zone; and none bears a time that the clocks skipped, for localtime never
 * shows one: such a name is from a machine that kept another zone's time, or was given by hand.
 */

import { LocalTimes } from '../standards/time-zone.ts';
import { type TimeUnit, repeatsEvery, resolution } from '../standards/strftime.ts';
import { DAY_OF_MINUTES, scan } from './name-scan.ts';
import { SLOT, SLOTS, type Step, stepsOf } from './name-steps.ts';
import { type Told, agrees, datesOf } from './named-date.ts';
import { SECOND, MINUTE, HOUR } from '../standards/time-units.ts';

export interface NamedTime {
  /**
   * Milliseconds since 1970, in order. One as a rule. Two where the clocks went back and showed the time again, and the
   * name has no offset. None where the clocks of the zone skipped the time.
   */
  readonly instants: readonly number[];
  /** Minutes east of UTC, where the name has it. */
  readonly offset: number | undefined;
}

export interface FileNames {
  readonly pattern: string;
  /** The folders at the beginning that all names have: `paddock/`; or nothing. */
  readonly folder: string;
  /** How many folders deep the files lie. */
  readonly depth: number;
  /** The unit that times are rounded down to in names. */
  readonly finest: TimeUnit | 'none';
  /** The same in milliseconds; `undefined` where names tell no time of day. */
  readonly roundedTo: number | undefined;
  /** Why no instant can be told from a name: “they come again every day”. `undefined` where it can. */
  readonly untellable: string | undefined;
  /** Whether the path, with forward slashes and from the folder that the pattern starts in, is a name of this pattern. */
  matches(path: string): boolean;
  /** `undefined` where the path is no name of this pattern, and where its names tell no instant. */
  read(path: string): NamedTime | undefined;
}

const PRECISIONS: Partial<Record<TimeUnit | 'none', number>> = { second: SECOND, minute: MINUTE, hour: HOUR };

/** What a pattern tells beyond one way of saying it, and by which clock. */
interface Reading {
  readonly clock: LocalTimes | undefined;
  readonly saysMore: boolean;
  readonly hasHour: boolean;
}

/**
 * Reads the pattern once, for a million names.
 *
 * @param zone the recorder's time zone; without one, only names with an offset or seconds since 1970 tell an instant
 * @throws RangeError if there is no such zone
 */
export function fileNames(pattern: string, zone: string | undefined): FileNames {
  const read = stepsOf(pattern);
  const [steps, fault] = 'unreadable' in read ? [undefined, read.unreadable] : [read, undefined];
  const slots = new Set(steps?.flatMap(slotsOf));
  const finest = resolution(pattern);
  const roundedTo = PRECISIONS[finest];
  const untellable = fault ?? wanting(pattern, finest) ?? zoneless(slots, zone);
  const reading: Reading = {
    clock: zone === undefined ? undefined : new LocalTimes(zone),
    saysMore: saysMore(slots),
    hasHour: roundedTo !== undefined,
  };
  const told: Told = new Float64Array(SLOTS);
  const matches = (path: string): boolean => steps !== undefined && scan(steps, path, told);
  const shape = (steps ?? []).map((step) => (step.kind === 'text' ? step.text : '\0')).join('');
  return {
    pattern,
    folder: shape.slice(0, (shape.split('\0', 1)[0] ?? '').lastIndexOf('/') + 1),
    depth: shape.split('/').length - 1,
    finest,
    roundedTo,
    untellable,
    matches,
    read: (path) => (untellable === undefined && matches(path) ? timeOf(told, reading) : undefined),
  };
}

function timeOf(told: Told, { clock, saysMore: checked, hasHour }: Reading): NamedTime | undefined {
  const shifted = told[SLOT.offset] ?? -1;
  const offset = shifted === -1 ? undefined : shifted - DAY_OF_MINUTES;
  const epoch = told[SLOT.epoch] ?? -1;
  if (epoch !== -1) return { instants: [epoch * SECOND], offset };
  const time = timeOfDay(told);
  const dates = datesOf(told);
  const local = (checked ? dates.filter((date) => agrees(date, told)) : dates).map((date) => date + time);
  if (local.length === 0 || time < 0) return undefined;
  if (offset !== undefined) return { instants: local.map((shown) => shown - offset * MINUTE), offset };
  if (clock === undefined) return undefined;
  return {
    instants: local.flatMap((shown) => (hasHour ? clock.instants(shown) : clock.firstAtOrAfter(shown))),
    offset,
  };
}

/** Milliseconds since midnight by the clock; negative where the name contradicts itself. */
function timeOfDay(told: Told): number {
  const told24 = told[SLOT.hour] ?? -1;
  const of12 = told[SLOT.hourOf12] ?? -1;
  const half = told[SLOT.half] ?? -1;
  const hour = told24 !== -1 ? told24 : of12 === -1 ? 0 : (of12 % 12) + half * 12;
  if ((of12 !== -1 && hour % 12 !== of12 % 12) || (half !== -1 && of12 !== -1 && Math.floor(hour / 12) !== half))
    return -1;
  return ((hour * 60 + Math.max(0, told[SLOT.minute] ?? 0)) * 60 + Math.max(0, told[SLOT.second] ?? 0)) * 1000;
}

/** What the names lack. */
function wanting(pattern: string, finest: TimeUnit | 'none'): string | undefined {
  if (finest === 'none') return 'they tell no time';
  const cycle = repeatsEvery(pattern);
  return cycle === undefined ? undefined : `they come again every ${cycle}`;
}

function zoneless(slots: ReadonlySet<number>, zone: string | undefined): string | undefined {
  if (zone !== undefined || slots.has(SLOT.epoch) || slots.has(SLOT.offset)) return undefined;
  return 'they have no offset from UTC, and the time zone of the site is not declared';
}

/** Whether the day is told in more ways than one, which then have to agree. */
function saysMore(slots: ReadonlySet<number>): boolean {
  const beside = [SLOT.weekday, SLOT.isoWeek, SLOT.sundayWeek, SLOT.mondayWeek, SLOT.weekYear, SLOT.weekYearOfCentury];
  return (
    beside.some((slot) => slots.has(slot)) ||
    (slots.has(SLOT.dayOfYear) && (slots.has(SLOT.month) || slots.has(SLOT.day))) ||
    (slots.has(SLOT.year) && (slots.has(SLOT.century) || slots.has(SLOT.yearOfCentury)))
  );
}

function slotsOf(step: Step): number[] {
  if (step.kind === 'number' || step.kind === 'word') return [step.slot];
  return step.kind === 'offset' ? [SLOT.offset] : [];
}
