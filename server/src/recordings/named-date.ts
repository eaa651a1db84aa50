/** The day that a name tells, by whichever of the calendar's ways it tells it, and what else it says of that day. */

import { Temporal } from 'temporal-polyfill';
import { DAY } from '../standards/time-units.ts';
import { localTime } from '../standards/time-zone.ts';
import { SLOT } from './name-steps.ts';

/** What was read of a name, by slot. */
export type Told = Float64Array;

/**
 * Midnight of the days that the name can mean, as `localTime` has it: one as a rule; two where the year is that of the
 * week of ISO 8601 and the day that of a month; none where there is no such day.
 */
export function datesOf(told: Told): number[] {
  const year = yearOf(told);
  const weekYear = weekYearOf(told);
  if (weekYear === undefined) return year === undefined ? [] : dateIn(year, told);
  if (slot(told, SLOT.isoWeek) !== undefined) return [isoDate(weekYear, told)];
  return [weekYear - 1, weekYear, weekYear + 1]
    .flatMap((candidate) => dateIn(candidate, told))
    .filter((date) => agrees(date, told));
}

/** Whether all that the name tells of the day is so. Only asked of names that tell something twice. */
export function agrees(date: number, told: Told): boolean {
  const utc = new Date(date);
  const calendar = new Temporal.PlainDate(utc.getUTCFullYear(), utc.getUTCMonth() + 1, utc.getUTCDate());
  const { year, month, day, dayOfWeek, dayOfYear, weekOfYear = 0, yearOfWeek = 0 } = calendar;
  const facts: readonly (readonly [slot: number, value: number])[] = [
    [SLOT.year, year],
    [SLOT.century, Math.floor(year / 100)],
    [SLOT.yearOfCentury, year % 100],
    [SLOT.month, month],
    [SLOT.day, day],
    [SLOT.dayOfYear, dayOfYear],
    [SLOT.weekday, dayOfWeek % 7],
    [SLOT.weekYear, yearOfWeek],
    [SLOT.weekYearOfCentury, yearOfWeek % 100],
    [SLOT.isoWeek, weekOfYear],
    [SLOT.sundayWeek, Math.floor((dayOfYear + 6 - (dayOfWeek % 7)) / 7)],
    [SLOT.mondayWeek, Math.floor((dayOfYear + 7 - dayOfWeek) / 7)],
  ];
  return facts.every(([index, value]) => told[index] === -1 || told[index] === value);
}

function dateIn(year: number, told: Told): number[] {
  const dayOfYear = slot(told, SLOT.dayOfYear);
  if (dayOfYear !== undefined) {
    const date = firstOf(year) + (dayOfYear - 1) * DAY;
    return dayOfYear >= 1 && date < firstOf(year + 1) ? [date] : [];
  }
  const month = slot(told, SLOT.month);
  if (month !== undefined) {
    const date = localTime({ year, month, day: slot(told, SLOT.day) ?? 1 });
    return date === undefined ? [] : [date];
  }
  return dateOfWeek(year, told);
}

/** By `%U` or `%W`, whose weeks begin with the year's first Sunday or Monday and count from 0 before it; else by `%V`. */
function dateOfWeek(year: number, told: Told): number[] {
  const sundayWeek = slot(told, SLOT.sundayWeek);
  const week = sundayWeek ?? slot(told, SLOT.mondayWeek);
  const first = firstOf(year);
  if (week === undefined) {
    if (slot(told, SLOT.isoWeek) === undefined) return [first];
    return [year - 1, year, year + 1].map((candidate) => isoDate(candidate, told)).filter((date) => agrees(date, told));
  }
  const begins = sundayWeek === undefined ? 1 : 0;
  const weekday = ((slot(told, SLOT.weekday) ?? begins) + 7 - begins) % 7;
  const firstWeekday = (new Date(first).getUTCDay() + 7 - begins) % 7;
  // The day of the year, from 0, on which week 1 begins.
  const weekOne = (7 - firstWeekday) % 7;
  const date = first + (weekOne + (week - 1) * 7 + weekday) * DAY;
  if (slot(told, SLOT.weekday) === undefined) return [Math.max(date, first)];
  return date >= first && date < firstOf(year + 1) ? [date] : [];
}

/** The day of a week of ISO 8601; its Monday where no weekday is told. */
function isoDate(weekYear: number, told: Told): number {
  const fourth = firstOf(weekYear) + 3 * DAY;
  const monday = fourth - ((new Date(fourth).getUTCDay() + 6) % 7) * DAY;
  const weekday = ((slot(told, SLOT.weekday) ?? 1) + 6) % 7;
  return monday + (((slot(told, SLOT.isoWeek) ?? 1) - 1) * 7 + weekday) * DAY;
}

function yearOf(told: Told): number | undefined {
  const century = slot(told, SLOT.century);
  const ofCentury = slot(told, SLOT.yearOfCentury);
  return (
    slot(told, SLOT.year) ??
    (ofCentury === undefined || century === undefined ? windowed(ofCentury) : century * 100 + ofCentury)
  );
}

/** Where the name has no year but that of the ISO week. */
function weekYearOf(told: Told): number | undefined {
  if (yearOf(told) !== undefined) return undefined;
  return slot(told, SLOT.weekYear) ?? windowed(slot(told, SLOT.weekYearOfCentury));
}

/** POSIX strptime, `%y`: 69 to 99 are of the 1900s, 00 to 68 of the 2000s. */
function windowed(ofCentury: number | undefined): number | undefined {
  return ofCentury === undefined ? undefined : ofCentury + (ofCentury < 69 ? 2000 : 1900);
}

function slot(told: Told, index: number): number | undefined {
  const value = told[index];
  return value === undefined || value === -1 ? undefined : value;
}

function firstOf(year: number): number {
  return new Date(0).setUTCFullYear(year, 0, 1);
}
