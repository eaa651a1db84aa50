/** A unified diff, as `diff -u` prints it and `patch` reads it. */

import { structuredPatch } from 'diff';
import { visiblePath } from '../text/visible.ts';

export function lineDiff(path: string, before: string, after: string): string {
  const file = visiblePath(path);
  const { hunks } = structuredPatch(file, file, before, after, '', '', { context: 2 });
  const lines = hunks.flatMap(({ oldStart, oldLines, newStart, newLines, lines: own }) => [
    `@@ -${oldStart},${oldLines} +${newStart},${newLines} @@`,
    ...own,
  ]);
  return [`--- a/${file}`, `+++ b/${file}`, ...lines, ''].join('\n');
}
