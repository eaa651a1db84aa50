/** Compares how long a recording is really kept with `keep` and the policies. */

import { placeOf } from '../../site/item.ts';
import type { Site } from '../../site/model.ts';
import { type Bound, retentionBoundsOf } from '../../site/retention.ts';
import { bytes, count, days, duration, asName } from '../../text/words.ts';
import type { Found, Related } from '../../lint/rule.ts';
import { recordingRules as rules } from './rules.ts';
import type { Looked } from './looked.ts';
import { DAY, HOUR, MINUTE } from '../../standards/time-units.ts';

/** @param since when recording began, where the user gives it; milliseconds since 1970 */
export function ofKept(site: Site, looked: Looked, now: number, since: number | undefined): Found[] {
  const {
    course: { first, end, from },
  } = looked;
  if (end === first) return [];
  const age = now - from;
  const { least, most } = retentionBoundsOf(site.policies.retention, looked.recording.name);
  return [...tooLong(looked, age, now, most), ...tooShort(looked, age, since, least)];
}

function tooLong(
  { recording: { item, name, keep }, rows, expected, rounding = 0, course, path, time }: Looked,
  age: number,
  now: number,
  most: Bound | undefined,
): Found[] {
  const file = (expected?.most ?? 0) + rounding;
  // A deletion may run only once a day.
  const due = keep === undefined ? Infinity : keep + Math.min(DAY, Math.max(HOUR, keep / 2)) + file;
  const allowed = most === undefined ? Infinity : most.time + HOUR + file;
  if (age <= Math.min(due, allowed)) return [];
  const over = age > due && keep !== undefined ? keep : (most?.time ?? 0);
  const end = Math.min(rows.before(now - over - file), course.end);
  let size = 0;
  for (let index = course.first; index < end; index++) size += rows.size(index);
  const at = most !== undefined ? placeOf(most.policy.item, [...most.policy.keyPath, 'at-most']) : undefined;
  const related: Related[] =
    at !== undefined && age > due && age > allowed && most !== undefined
      ? [{ at, message: `at most ${duration(most.time)}` }]
      : [];
  return [
    {
      rule: rules.keptTooLong,
      at: age > due || at === undefined ? placeOf(item, ['keep']) : at,
      message:
        `${asName(name)} goes back ${ageWords(age)}, to ${time(course.from)} (${path(course.first)}), and is to be kept for ` +
        `${duration(over)}${age > due ? '' : ' at most'}: ${count(end - course.first, 'file')} of ${bytes(size)} ` +
        'should be gone. Does the deletion run?',
      acceptAt: [name],
      related,
    },
  ];
}

function tooShort(
  { recording: { item, name, keep }, expected, rounding = 0, emptyFolder, course, path, time }: Looked,
  age: number,
  since: number | undefined,
  least: Bound | undefined,
): Found[] {
  const wanted = Math.max(keep ?? 0, least?.time ?? 0);
  // To stay within `at-most`, a deletion has to be early by the length of a file or two.
  const slack = 2 * (expected?.most ?? 0) + rounding + HOUR;
  const began = Math.min(since ?? Infinity, emptyFolder ?? Infinity);
  if (age >= wanted - slack || began > course.from - slack) return [];
  const breaks = least !== undefined && age < least.time - slack;
  return [
    {
      rule: rules.keptTooShort,
      at: breaks ? placeOf(least.policy.item, [...least.policy.keyPath, 'at-least']) : placeOf(item, ['keep']),
      message:
        `${asName(name)} goes back no more than ${ageWords(age)}, to ${time(course.from)} (${path(course.first)}), and is to be ` +
        `kept for ${duration(breaks ? least.time : wanted)}${breaks ? ' at least' : ''}, though it has been recorded ` +
        `since ${time(began)}. What deletes it?`,
      acceptAt: [name],
    },
  ];
}

/** To a tenth of a day, or to a minute. */
export function ageWords(milliseconds: number): string {
  return milliseconds >= DAY ? days(milliseconds / DAY) : duration(Math.round(milliseconds / MINUTE) * MINUTE);
}
