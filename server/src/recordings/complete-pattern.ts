/** Patterns that distinguish more files than a given one. */

import { type Conversion, parsePattern, repeatsEvery, resolution } from '../standards/strftime.ts';
import { type Edit, nodeAt, scalarText, setValue } from '../site/edit.ts';
import type { Recording } from '../site/model.ts';

const DATE = '%Y-%m-%d';

/** The pattern with the offset from UTC behind its last conversion; `undefined` where it has none. */
export function withOffset(pattern: string): string | undefined {
  const last = conversionsOf(pattern).pop();
  return last === undefined ? undefined : `${pattern.slice(0, last.end)}%z${pattern.slice(last.end)}`;
}

/** The pattern completed so that it names every second differently, in its own style where that is enough. */
export function completed(pattern: string): string {
  const inOrder = withMinutes(pattern);
  const base = repeatsEvery(inOrder) === 'half day' ? in24Hours(inOrder) : inOrder;
  for (const candidate of [base, finer(base), dated(base), dated(finer(base))]) {
    if (resolution(candidate) === 'second' && repeatsEvery(candidate) === undefined) return candidate;
  }
  return beforeExtension(pattern, `${DATE}_%H-%M-%S`);
}

/** With minutes for a month that is written between hours and seconds. */
function withMinutes(pattern: string): string {
  const all = conversionsOf(pattern);
  const letterAt = (index: number): string | undefined => all[index]?.conversion.specifier;
  const at = all.findIndex((_, index) => letterAt(index) === 'm' && /[HkIl]/.test(letterAt(index - 1) ?? ''));
  const month = all[at];
  if (month === undefined || letterAt(at + 1) !== 'S') return pattern;
  return `${pattern.slice(0, month.start)}%M${pattern.slice(month.end)}`;
}

/** With hours that count to 24 for those that count to 12. */
function in24Hours(pattern: string): string {
  let result = pattern;
  for (const { conversion, start, end } of conversionsOf(pattern).reverse()) {
    if (['I', 'l'].includes(conversion.specifier)) result = `${result.slice(0, start)}%H${result.slice(end)}`;
  }
  return result;
}

/** Minutes and seconds added after hours, with the separator that the pattern uses. */
function finer(pattern: string): string {
  const conversions = conversionsOf(pattern);
  const at = (...letters: readonly string[]): Placed | undefined =>
    conversions.filter(({ conversion }) => letters.includes(conversion.specifier)).pop();
  const short = at('R');
  if (short !== undefined) return `${pattern.slice(0, short.start)}%T${pattern.slice(short.end)}`;
  const [hour, minute] = [at('H', 'k'), at('M')];
  if (minute !== undefined) {
    const between = hour === undefined || hour.end > minute.start ? '-' : pattern.slice(hour.end, minute.start);
    return `${pattern.slice(0, minute.end)}${between.length > 1 ? '-' : between}%S${pattern.slice(minute.end)}`;
  }
  if (hour !== undefined) return `${pattern.slice(0, hour.end)}-%M-%S${pattern.slice(hour.end)}`;
  return beforeExtension(pattern, '%H-%M-%S');
}

/** With the date before the name of the file. */
function dated(pattern: string): string {
  const name = pattern.lastIndexOf('/') + 1;
  return `${pattern.slice(0, name)}${DATE}_${pattern.slice(name)}`;
}

function beforeExtension(pattern: string, text: string): string {
  const extension = /\.[A-Za-z0-9]+$/.exec(pattern);
  const at = extension === null ? pattern.length : extension.index;
  const set = at === 0 || pattern.charAt(at - 1) === '/' ? '' : '_';
  return `${pattern.slice(0, at)}${set}${text}${pattern.slice(at)}`;
}

interface Placed {
  readonly conversion: Conversion;
  readonly start: number;
  readonly end: number;
}

function conversionsOf(pattern: string): Placed[] {
  const found: Placed[] = [];
  let end = 0;
  for (const part of parsePattern(pattern)) {
    if ('literal' in part) continue;
    const start = indexOutside(pattern, part.text, end);
    end = start + part.text.length;
    found.push({ conversion: part, start, end });
  }
  return found;
}

/** The offset of a conversion from `from` on; the second half of `%%` starts none. */
function indexOutside(pattern: string, conversion: string, from: number): number {
  let at = from;
  while (at < pattern.length && !pattern.startsWith(conversion, at)) at += pattern.startsWith('%%', at) ? 2 : 1;
  return at;
}

/** Writes the pattern as the recording's `file`, quoted where it was. */
export function setFile({ item }: Recording, pattern: string): Edit {
  const node = nodeAt(item, ['file']);
  const isQuoted = node?.kind === 'scalar' && node.style === 'quoted';
  return setValue(item, ['file'], isQuoted ? JSON.stringify(pattern) : scalarText(pattern, true));
}
