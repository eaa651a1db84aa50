/** A path read by the steps of a pattern, without going back and without making text. */

import { type NumberStep, SLOT, type Step } from './name-steps.ts';
import type { Told } from './named-date.ts';

const [ZERO, NINE, SPACE, PLUS, MINUS] = [48, 57, 32, 43, 45];

/** Whether the path is one that the steps write; `told` then holds what it tells. */
export function scan(steps: readonly Step[], path: string, told: Told): boolean {
  told.fill(-1);
  let at = 0;
  for (const step of steps) {
    if (step.kind === 'text') at = path.startsWith(step.text, at) ? at + step.text.length : -1;
    else if (step.kind === 'number') at = scanNumber(step, path, at, told);
    else if (step.kind === 'word') at = scanWord(step, path, at, told);
    else if (step.kind === 'offset') at = scanOffset(path, filled(path, at, step.fill), told);
    else at = scanZone(path, filled(path, at, step.fill));
    if (at === -1) return false;
  }
  return at === path.length;
}

/** Where the number ends; -1 where there is none, it is out of bounds, or the name has told another before. */
function scanNumber(
  { slot, least, most, fill, from, to }: NumberStep,
  path: string,
  start: number,
  told: Told,
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
  // What is not filled up with zeros has none before it; seconds since 1970 can be, to some width or other.
  const unfilled = fill === ' ' || (least < most && slot !== SLOT.epoch);
  if (unfilled && at - digits > 1 && path.charCodeAt(digits) === ZERO) return -1;
  // The seventh day of `%u` is the day 0 of `%w`.
  return tell(told, slot, slot === SLOT.weekday ? value % 7 : value) ? at : -1;
}

function scanWord(step: Step & { readonly kind: 'word' }, path: string, start: number, told: Told): number {
  const at = step.width === 0 ? start : filled(path, start, step.fill);
  for (const { text, value } of step.words) {
    if (!path.startsWith(text, at)) continue;
    const padded = at - start;
    if (padded === 0 ? text.length < step.width && step.fill !== '' : padded + text.length !== step.width) return -1;
    return tell(told, step.slot, value) ? at + text.length : -1;
  }
  return -1;
}

function scanOffset(path: string, at: number, told: Told): number {
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
  // -1 stands for what is not told, so the sign goes into the number's size.
  return tell(told, SLOT.offset, sign === PLUS ? DAY_OF_MINUTES + minutes : DAY_OF_MINUTES - minutes) ? at + 5 : -1;
}

/** What an offset is stored above, so that none is negative. */
export const DAY_OF_MINUTES = 24 * 60;

/** Three letters or more; or, where a zone has no letters, a sign and two or four digits. */
const zoneName = /[A-Za-z]{3,}|[+-][0-9]{2}(?:[0-9]{2})?/y;

function scanZone(path: string, at: number): number {
  zoneName.lastIndex = at;
  return zoneName.test(path) ? zoneName.lastIndex : -1;
}

function filled(path: string, start: number, fill: string): number {
  let at = start;
  if (fill !== '') while (path.startsWith(fill, at)) at += 1;
  return at;
}

function tell(told: Told, slot: number, value: number): boolean {
  if (told[slot] !== -1 && told[slot] !== value) return false;
  told[slot] = value;
  return true;
}
