/** A unified diff, as `diff -u` prints it and `patch` reads it. */

import { diffArrays } from 'diff';
import { visiblePath } from '../text/visible.ts';

/** Unchanged lines that are shown around changes. */
const CONTEXT = 2;

/** The most lines apart for which the fewest changes are found: the time grows with their square. */
const MOST_APART = 4000;

export function lineDiff(path: string, before: string, after: string): string {
  const file = visiblePath(path);
  const lines = signed(linesOf(before), linesOf(after));
  return [`--- a/${file}`, `+++ b/${file}`, ...hunks(lines), ''].join('\n');
}

/** With their line breaks. */
function linesOf(text: string): string[] {
  return text.match(/[^\n]*\n|[^\n]+$/g) ?? [];
}

/** The lines of both texts, each behind its sign: `-` of the old text, `+` of the new one, a space of both. */
function signed(before: readonly string[], after: readonly string[]): string[] {
  const lines: string[] = [];
  let [old, now] = [0, 0];
  for (const [oldEnd, nowEnd] of [...matches(before, after), [before.length, after.length] as const]) {
    for (; old < oldEnd; old++) lines.push(`-${before[old] ?? ''}`);
    for (; now < nowEnd; now++) lines.push(`+${after[now] ?? ''}`);
    const line = before[old++];
    if (line !== undefined) lines.push(` ${line}`);
    now++;
  }
  return lines;
}

/** The lines that stay, by their numbers in both texts. Only lines that both texts have are compared at all. */
function matches(before: readonly string[], after: readonly string[]): (readonly [number, number])[] {
  const [inBefore, inAfter] = [new Set(before), new Set(after)];
  const old = [...before.keys()].filter((at) => inAfter.has(before[at] ?? ''));
  const now = [...after.keys()].filter((at) => inBefore.has(after[at] ?? ''));
  const found: (readonly [number, number])[] = [];
  const textsOf = (numbers: readonly number[], lines: readonly string[]): string[] =>
    numbers.map((at) => lines[at] ?? '');
  let [i, j] = [0, 0];
  for (const { count, added, removed } of diffArrays(textsOf(old, before), textsOf(now, after), {
    maxEditLength: MOST_APART,
  }) ?? []) {
    if (!added && !removed) for (let k = 0; k < count; k++) found.push([old[i + k] ?? 0, now[j + k] ?? 0]);
    if (!added) i += count;
    if (!removed) j += count;
  }
  return found;
}

/** The changes with what is around them; changes that are near each other are one hunk. */
function hunks(lines: readonly string[]): string[] {
  const found: string[] = [];
  let [old, now, at] = [1, 1, 0];
  const pass = (line: string): void => {
    if (!line.startsWith('+')) old++;
    if (!line.startsWith('-')) now++;
  };
  const isChanged = (line: string): boolean => !line.startsWith(' ');
  while (at < lines.length) {
    let first = at;
    while (first < lines.length && !isChanged(lines[first] ?? '')) first++;
    if (first === lines.length) break;
    let end = first;
    for (let next = first; next < lines.length && next <= end + 2 * CONTEXT; next++)
      if (isChanged(lines[next] ?? '')) end = next + 1;
    const start = Math.max(at, first - CONTEXT);
    lines.slice(at, start).forEach(pass);
    const [oldStart, nowStart] = [old, now];
    at = Math.min(lines.length, end + CONTEXT);
    const own = lines.slice(start, at);
    own.forEach(pass);
    found.push(`@@ -${oldStart},${old - oldStart} +${nowStart},${now - nowStart} @@`);
    for (const line of own)
      found.push(...(line.endsWith('\n') ? [line.slice(0, -1)] : [line, '\\ No newline at end of file']));
  }
  return found;
}
