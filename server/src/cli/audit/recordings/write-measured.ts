/** Writes the bit rates that were measured into the files of the site. */

import { writeFileSync } from 'node:fs';
import { recordingRules } from '../../../audit/recordings/rules.ts';
import { pathOf } from '../../../machine/disk.ts';
import type { Diagnostic } from '../../../lint/rule.ts';
import { editedTexts } from '../../../site/edit.ts';
import { lineDiff } from '../../line-diff.ts';
import { type SiteOnDisk, shownPath } from '../../sites.ts';

/** What is changed is shown on standard error. */
export function writeMeasured({ folder }: SiteOnDisk, found: readonly Diagnostic[]): void {
  const edits = found
    .filter(({ rule }) => rule === recordingRules.bitRate)
    .flatMap(({ fixes }) => fixes?.()[0]?.edits ?? []);
  for (const [uri, after] of editedTexts(folder.files, edits)) {
    const before = folder.get(uri)?.text ?? '';
    writeFileSync(pathOf(uri), after);
    process.stderr.write(lineDiff(shownPath(uri), before, after));
  }
}
