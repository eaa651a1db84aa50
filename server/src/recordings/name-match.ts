/** Reads a path by the steps of a pattern, without backtracking and without making strings. */

import { type NumberStep, FIELD, type NameStep } from './name-steps.ts';
import type { NameFields } from './named-date.ts';

const [ZERO, NINE, SPACE, PLUS, MINUS] = [48, 57, 32, 43, 45];

/** Whether the steps can write the path; `fields` then holds its values. */
export function matchName(steps: readonly NameStep[], path: string, fields: NameFields): boolean {
  fields.fill(-1);
  let at = 0;
  for (const step of steps) {
    if (step.kind === 'text') at = path.startsWith(step.text, at) ? at + step.text.length : -1;
    else if (step.kind === 'number') at = matchNumber(step, path, at, fields);
    else if (step.kind === 'word') at = matchWord(step, path, at, fields);
    else if (step.kind === 'offset') at = matchOffset(path, skipped(path, at, step.fill), fields);
    else at = matchZone(path, skipped(path, at, step.fill));
    if (at === -1) return false;
  }
  return at === path.length;
}

/** Where the number ends; -1 where there is none, it is out of range, or it contradicts the path before it. */
function matchNumber(
  { field, least, most, fill, from, to }: NumberStep,
  path: string,
  start: number,
  fields: NameFields,
): number {
  let at = start;
  const last = start + most;
  if (fill === ' ') while (at < last - 1 && path.charCodeAt(at) === SPACE) at += 1;
  const digits = at;
  let value = 0;
  for (; at < last; at += 1) {
    const code = path.charCodeAt(at);
    if (!(code >= ZERO && code <= NINE)) break;
    value = value * 10 + code - ZERO;
  }
  const length = at - start;
  if (at === digits || length < least || value < from || value > to) return -1;
  // A number that is not padded with zeros has no leading ones. Seconds since 1970 may be padded to any width.
  const unfilled = fill === ' ' || (least < most && field !== FIELD.epoch);
  if (unfilled && at - digits > 1 && path.charCodeAt(digits) === ZERO) return -1;
  // Day 7 of `%u` is day 0 of `%w`.
  return setField(fields, field, field === FIELD.weekday ? value % 7 : value) ? at : -1;
}

function matchWord(
  step: NameStep & { readonly kind: 'word' },
  path: string,
  start: number,
  fields: NameFields,
): number {
  const at = step.width === 0 ? start : skipped(path, start, step.fill);
  for (const { text, value } of step.words) {
    if (!path.startsWith(text, at)) continue;
    const padded = at - start;
    if (padded === 0 ? text.length < step.width && step.fill !== '' : padded + text.length !== step.width) return -1;
    return setField(fields, step.field, value) ? at + text.length : -1;
  }
  return -1;
}

function matchOffset(path: string, at: number, fields: NameFields): number {
  const sign = path.charCodeAt(at);
  if (sign !== PLUS && sign !== MINUS) return -1;
  let value = 0;
  for (let digit = at + 1; digit < at + 5; digit += 1) {
    const code = path.charCodeAt(digit);
    if (!(code >= ZERO && code <= NINE)) return -1;
    value = value * 10 + code - ZERO;
  }
  const minutes = Math.floor(value / 100) * 60 + (value % 100);
  if (value % 100 > 59 || minutes >= 24 * 60) return -1;
  // -1 means that nothing was read, so no offset may be negative.
  return setField(fields, FIELD.offset, sign === PLUS ? DAY_OF_MINUTES + minutes : DAY_OF_MINUTES - minutes)
    ? at + 5
    : -1;
}

/** Offsets are stored with a day added, so that none is negative. */
export const DAY_OF_MINUTES = 24 * 60;

/** Three letters or more, or a sign and two or four digits where the zone has no abbreviation of letters. */
const zoneName = /[A-Za-z]{3,}|[+-][0-9]{2}(?:[0-9]{2})?/y;

function matchZone(path: string, at: number): number {
  zoneName.lastIndex = at;
  return zoneName.test(path) ? zoneName.lastIndex : -1;
}

/** The position after the padding. */
function skipped(path: string, start: number, fill: string): number {
  let at = start;
  if (fill !== '') while (path.startsWith(fill, at)) at += 1;
  return at;
}

function setField(fields: NameFields, field: number, value: number): boolean {
  if (fields[field] !== -1 && fields[field] !== value) return false;
  fields[field] = value;
  return true;
}
