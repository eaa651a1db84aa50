/** Findings over the course of a recording: missing or repeated time, empty or damaged files, wrong clocks. */

import { namePlace, placeOf } from '../../site/item.ts';
import { visible } from '../../text/visible.ts';
import { count, duration, list, asName } from '../../text/words.ts';
import type { Finding, Found } from '../../lint/rule.ts';
import { recordingRules as rules } from './rules.ts';
import type { Looked } from './looked.ts';
import type { Stretch, Stretches } from './stretches.ts';
import type { Examples } from './visitor.ts';
import { DAY } from '../../standards/time-units.ts';

export function ofTime(looked: Looked): Found[] {
  const {
    recording: { item, name },
    names,
    rows,
    untold,
    course,
  } = looked;
  const [file, segment] = [placeOf(item, ['file']), placeOf(item, ['segment'])];
  const acceptAt = [name];
  const found: Found[] = [];
  if (rows.length === 0 && untold.count === 0 && looked.impossible.count === 0)
    return [
      {
        rule: rules.absent,
        at: namePlace(item),
        message: `There is no file of ${asName(name)}, which are named ${visible(names.pattern, 100)}.`,
        acceptAt,
      },
    ];
  const { gaps, shorts, overlaps, damaged } = course;
  if (course.stopped !== undefined)
    found.push({
      rule: rules.stopped,
      at: namePlace(item),
      message:
        `Nothing of ${asName(name)} has been begun since ${looked.path(course.end - 1)}, which ends about ` +
        `${looked.time(course.stopped)}.`,
      acceptAt,
    });
  if (gaps.count > 0)
    found.push({
      rule: rules.gap,
      at: namePlace(item),
      message:
        `${asName(name)} lacks ${duration(whole(gaps.total))} in ${count(gaps.count, 'gap')}: ` +
        `${stretchesText(looked, gaps, 'behind')}.`,
      acceptAt,
    });
  if (course.otherLength && course.typical !== undefined)
    found.push({
      rule: rules.length,
      at: segment,
      message:
        `Files of ${asName(name)} follow each other after ${duration(whole(course.typical))} as a rule, and ` +
        `${duration(recording(looked))} is planned: ${lengthAdvice(looked)}`,
      acceptAt,
    });
  if (shorts.count > 0)
    found.push({
      rule: rules.short,
      ...(shorts.count > Math.max(4, (2 * (course.to - course.from)) / DAY) ? { severity: 'warning' as const } : {}),
      at: segment,
      message:
        `${count(shorts.count, 'file')} of ${asName(name)} ${shorts.count === 1 ? 'was' : 'were'} followed by the next after ` +
        `less than ${duration(recording(looked))}: ${stretchesText(looked, shorts, 'of')}. ` +
        'The stream stopped, or the recorder began again.',
      acceptAt,
    });
  if (overlaps.count > 0)
    found.push({
      rule: rules.overlap,
      at: namePlace(item),
      message:
        `${asName(name)} has ${duration(whole(overlaps.total))} twice, in ${count(overlaps.count, 'file')} that ` +
        `${overlaps.count === 1 ? 'goes' : 'go'} on after the next has begun: ` +
        `${stretchesText(looked, overlaps, 'of')}. Do two recorders write there?`,
      acceptAt,
    });
  if (damaged.count > 0)
    found.push({
      rule: rules.damaged,
      at: namePlace(item),
      message: `ffprobe cannot read ${count(damaged.count, 'file')} of ${asName(name)}: ${filesText(looked, damaged)}.`,
      acceptAt,
    });
  const empties = [
    ...(course.empties.count > 0 ? [filesText(looked, course.empties)] : []),
    ...(looked.untoldEmpty.count > 0 ? [examplesText(looked.untoldEmpty)] : []),
  ];
  const emptyCount = course.empties.count + looked.untoldEmpty.count;
  if (emptyCount > 0)
    found.push({
      rule: rules.empty,
      at: namePlace(item),
      message: `${count(emptyCount, 'file')} of ${asName(name)} ${emptyCount === 1 ? 'is' : 'are'} empty: ${empties.join(', ')}.`,
      acceptAt,
    });
  return [
    ...found,
    ...folds(looked).map((message) => ({ rule: rules.repeatedHour, at: file, acceptAt, ...message })),
    ...clocks(looked).map((message) => ({ rule: rules.clock, at: file, acceptAt, message })),
  ];
}

function folds({ course, recording: { name }, time }: Looked): Pick<Finding, 'message' | 'severity'>[] {
  return course.folds.map(({ from, to, files, lost, overwritten }) => {
    const hour = `Of the time from ${time(from)} to ${time(to)}, which clocks showed twice,`;
    const without = `${asName(name)} is named without an offset from UTC`;
    if (overwritten)
      return {
        message:
          `${hour} ${duration(whole(lost))} of ${asName(name)} are lost: ${without}, so files of the second pass overwrote ` +
          'those of the first.',
      };
    const there = `${count(files, 'file')} of ${asName(name)} ${files === 1 ? 'is' : 'are'} there`;
    if (lost > 0)
      return {
        message:
          `${hour} ${there}, and about ${duration(whole(lost))} are lost: ${without}, so one pass overwrote the ` +
          'other. Nobody can tell which is left.',
      };
    return {
      severity: 'information',
      message: `${hour} ${there}, and nobody can tell which are of the first pass: ${without}.`,
    };
  });
}

function clocks({ course: { future, unset }, impossible, early, recording: { name }, ...looked }: Looked): string[] {
  const messages: string[] = [];
  const words = { ...looked, name };
  const say = (number: number, what: string, which: string): void =>
    void messages.push(
      `${count(number, 'file')} of ${name} ${number === 1 ? 'bears a time' : 'bear times'} ${what}: ${which}.`,
    );
  if (future.count > 0) say(future.count, 'in the future', filesText(words, future));
  if (unset.count > 0) say(unset.count, 'before 2000, from a clock that was not set', filesText(words, unset));
  if (impossible.count > 0) say(impossible.count, 'that no clock of the site has shown', examplesText(impossible));
  if (early.count > 0) say(early.count, 'after the one at which it was last written to', examplesText(early));
  return messages;
}

/** Milliseconds rounded to a second, as names are no more exact. */
function whole(milliseconds: number): number {
  return Math.max(1000, Math.round(milliseconds / 1000) * 1000);
}

function recording({ expected }: Looked): number {
  return expected?.usual ?? 0;
}

function lengthAdvice({ course: { typical = 0 }, expected }: Looked): string {
  if (expected !== undefined && typical < expected.least)
    return 'they are cut shorter, or two recorders write at once, which --probe tells apart.';
  return 'they are cut longer, or keyframes are further apart than declared.';
}

function stretchesText(
  looked: Looked,
  { first, last, longest, count: number }: Stretches,
  how: 'behind' | 'of',
): string {
  if (first === undefined || last === undefined || longest === undefined) return '';
  const text = ({ index, from, to }: Stretch): string =>
    how === 'behind'
      ? `from ${looked.time(from)} to ${looked.time(to)}, behind ${looked.path(index)}`
      : `${looked.path(index)}, ${duration(whole(to - from))}`;
  if (number === 1) return text(first);
  const middle = longest === first || longest === last || number === 2 ? [] : [`the longest ${text(longest)}`];
  return [`the first ${text(first)}`, ...middle, `the last ${text(last)}`].join('; ');
}

function filesText({ path }: Pick<Looked, 'path'>, { first, last }: Stretches): string {
  const paths = [first, last].flatMap((stretch) => (stretch === undefined ? [] : [path(stretch.index)]));
  return firstAndLast(paths);
}

export function examplesText({ first, last }: Examples): string {
  return firstAndLast([first, last].flatMap((path) => (path === undefined ? [] : [visible(path, 120)])));
}

function firstAndLast(paths: readonly string[]): string {
  const different = [...new Set(paths)];
  return different.length === 2 ? `from ${list(different, 'to')}` : different.join('');
}
