/** The day in a name, by date, by day of the year or by week, and whether the rest of the name agrees. */

import { Temporal } from 'temporal-polyfill';
import { DAY } from '../standards/time-units.ts';
import { localTime } from '../standards/time-zone.ts';
import { FIELD } from './name-steps.ts';

/** The values that were read from a name, by `FIELD`; -1 for those that it does not have. */
export type NameFields = Float64Array;

/**
 * Midnight of the days that the name can mean, as a local time. Usually one; two where the year is that of an ISO week
 * and the day is one of a month; none where the calendar has no such day.
 */
export function datesOf(fields: NameFields): number[] {
  const year = yearOf(fields);
  const weekYear = weekYearOf(fields);
  if (weekYear === undefined) return year === undefined ? [] : dateIn(year, fields);
  if (valueOf(fields, FIELD.isoWeek) !== undefined) return [isoDate(weekYear, fields)];
  return [weekYear - 1, weekYear, weekYear + 1]
    .flatMap((candidate) => dateIn(candidate, fields))
    .filter((date) => agrees(date, fields));
}

/** Whether the day has all the values of the name. Only needed where a pattern gives the day in more than one way. */
export function agrees(date: number, fields: NameFields): boolean {
  const utc = new Date(date);
  const calendar = new Temporal.PlainDate(utc.getUTCFullYear(), utc.getUTCMonth() + 1, utc.getUTCDate());
  const { year, month, day, dayOfWeek, dayOfYear, weekOfYear = 0, yearOfWeek = 0 } = calendar;
  const values: readonly (readonly [index: number, value: number])[] = [
    [FIELD.year, year],
    [FIELD.century, Math.floor(year / 100)],
    [FIELD.yearOfCentury, year % 100],
    [FIELD.month, month],
    [FIELD.day, day],
    [FIELD.dayOfYear, dayOfYear],
    [FIELD.weekday, dayOfWeek % 7],
    [FIELD.weekYear, yearOfWeek],
    [FIELD.weekYearOfCentury, yearOfWeek % 100],
    [FIELD.isoWeek, weekOfYear],
    [FIELD.sundayWeek, Math.floor((dayOfYear + 6 - (dayOfWeek % 7)) / 7)],
    [FIELD.mondayWeek, Math.floor((dayOfYear + 7 - dayOfWeek) / 7)],
  ];
  return values.every(([index, value]) => fields[index] === -1 || fields[index] === value);
}

function dateIn(year: number, fields: NameFields): number[] {
  const dayOfYear = valueOf(fields, FIELD.dayOfYear);
  if (dayOfYear !== undefined) {
    const date = firstOf(year) + (dayOfYear - 1) * DAY;
    return dayOfYear >= 1 && date < firstOf(year + 1) ? [date] : [];
  }
  const month = valueOf(fields, FIELD.month);
  if (month !== undefined) {
    const date = localTime({ year, month, day: valueOf(fields, FIELD.day) ?? 1 });
    return date === undefined ? [] : [date];
  }
  return dateOfWeek(year, fields);
}

/** By `%U` or `%W`: week 1 starts on the year's first Sunday or Monday, and week 0 is before it. Else by `%V`. */
function dateOfWeek(year: number, fields: NameFields): number[] {
  const sundayWeek = valueOf(fields, FIELD.sundayWeek);
  const week = sundayWeek ?? valueOf(fields, FIELD.mondayWeek);
  const first = firstOf(year);
  if (week === undefined) {
    if (valueOf(fields, FIELD.isoWeek) === undefined) return [first];
    return [year - 1, year, year + 1]
      .map((candidate) => isoDate(candidate, fields))
      .filter((date) => agrees(date, fields));
  }
  const firstDay = sundayWeek === undefined ? 1 : 0;
  const weekday = ((valueOf(fields, FIELD.weekday) ?? firstDay) + 7 - firstDay) % 7;
  const firstWeekday = (new Date(first).getUTCDay() + 7 - firstDay) % 7;
  // The day of the year, from 0, on which week 1 firstDay.
  const weekOne = (7 - firstWeekday) % 7;
  const date = first + (weekOne + (week - 1) * 7 + weekday) * DAY;
  if (valueOf(fields, FIELD.weekday) === undefined) return [Math.max(date, first)];
  return date >= first && date < firstOf(year + 1) ? [date] : [];
}

/** The day of an ISO week; its Monday where the name has no weekday. */
function isoDate(weekYear: number, fields: NameFields): number {
  const fourth = firstOf(weekYear) + 3 * DAY;
  const monday = fourth - ((new Date(fourth).getUTCDay() + 6) % 7) * DAY;
  const weekday = ((valueOf(fields, FIELD.weekday) ?? 1) + 6) % 7;
  return monday + (((valueOf(fields, FIELD.isoWeek) ?? 1) - 1) * 7 + weekday) * DAY;
}

function yearOf(fields: NameFields): number | undefined {
  const century = valueOf(fields, FIELD.century);
  const ofCentury = valueOf(fields, FIELD.yearOfCentury);
  return (
    valueOf(fields, FIELD.year) ??
    (ofCentury === undefined || century === undefined ? fullYear(ofCentury) : century * 100 + ofCentury)
  );
}

/** The year of the ISO week, where the name has no other year. */
function weekYearOf(fields: NameFields): number | undefined {
  if (yearOf(fields) !== undefined) return undefined;
  return valueOf(fields, FIELD.weekYear) ?? fullYear(valueOf(fields, FIELD.weekYearOfCentury));
}

/** POSIX strptime, `%y`: 69 to 99 are in the 1900s, 00 to 68 in the 2000s. */
function fullYear(ofCentury: number | undefined): number | undefined {
  return ofCentury === undefined ? undefined : ofCentury + (ofCentury < 69 ? 2000 : 1900);
}

function valueOf(fields: NameFields, index: number): number | undefined {
  const value = fields[index];
  return value === undefined || value === -1 ? undefined : value;
}

function firstOf(year: number): number {
  return new Date(0).setUTCFullYear(year, 0, 1);
}
