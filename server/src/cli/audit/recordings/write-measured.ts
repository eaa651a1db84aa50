/** Writes the measured bit rates into the files of the site. */

import { recordingRules } from '../../../audit/recordings/rules.ts';
import type { Diagnostic } from '../../../lint/rule.ts';
import { type Rewritten, rewrite } from '../../../machine/rewrite.ts';
import { editedTexts } from '../../../site/edit.ts';
import { lineDiff } from '../../line-diff.ts';
import { printMessage } from '../../print.ts';
import { type SiteOnDisk, shownPath } from '../../sites.ts';

/** Shows the changes on standard error. */
export function writeMeasured({ folder }: SiteOnDisk, found: readonly Diagnostic[]): void {
  const edits = found
    .filter(({ rule }) => rule === recordingRules.bitRate)
    .flatMap(({ fixes }) => fixes?.()[0]?.edits ?? []);
  const changed = [...editedTexts(folder.files, edits)].map(([uri, after]): Rewritten => ({
    uri,
    before: folder.get(uri)?.text ?? '',
    after,
  }));
  rewrite(changed);
  for (const { uri, before, after } of changed) printMessage(lineDiff(shownPath(uri), before, after));
}
