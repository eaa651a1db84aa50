/** Applies all safe fixes of a site, round by round, until none is left. */

import { type Edit, applyEdits, byFile } from '../site/edit.ts';
import type { SiteFolder } from '../site/folder.ts';
import { check } from './check.ts';

/** A fix may bring another to light; more rounds than that would be two fixes that undo each other. */
const ROUNDS = 10;

/** Changes the texts of `folder`, and returns those that it has then. */
export function fixedTexts(folder: SiteFolder): { texts: ReadonlyMap<string, string>; fixes: number } {
  let fixes = 0;
  for (let round = 0; round < ROUNDS; round++) {
    const chosen: Edit[] = [];
    for (const { fixes: offered } of check(folder).diagnostics) {
      const fix = offered?.().find(({ safe }) => safe);
      if (fix === undefined || overlaps(chosen, fix.edits)) continue;
      chosen.push(...fix.edits);
      fixes++;
    }
    if (chosen.length === 0) break;
    const changed = [...byFile(chosen)].map(([uri, edits]) => [uri, applyEdits(folder.get(uri)?.text ?? '', edits)] as const);
    for (const [uri, text] of changed) folder.set(uri, text);
  }
  return { texts: new Map(folder.files.map(({ uri, text }) => [uri, text])), fixes };
}

/** What touches a place that another fix changes waits for the next round. */
function overlaps(chosen: readonly Edit[], edits: readonly Edit[]): boolean {
  return edits.some(({ at }) => chosen.some(({ at: other }) => other.piece === at.piece && other.start <= at.end && at.start <= other.end));
}
