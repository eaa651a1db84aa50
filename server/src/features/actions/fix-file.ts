/** All safe fixes in a file, or all of one rule, round by round, as edits of that file alone. */

import { perObject } from '../../memo.ts';
import type { ChooseFix } from '../../lint/fix-all.ts';
import { fixAll } from '../../check.ts';
import type { Checked } from '../../lint/check.ts';
import type { Diagnostic } from '../../lint/rule.ts';
import type { Edit, Fix } from '../../site/edit.ts';
import { SiteFolder, type SiteText } from '../../site/folder.ts';
import { fileOf } from '../../site/item.ts';
import { lineEdits } from './line-edits.ts';

/** Safe fixes, or the first fix of each finding of one rule. */
export type WantedFixes = 'safe' | { readonly rule: string };

/** The fixes of all findings; computed once, as an editor asks at each move of the cursor. */
export const fixesIn = perObject((_checked: Checked) =>
  perObject((diagnostic: Diagnostic): readonly Fix[] => diagnostic.fixes?.() ?? []),
);

/** How many findings of the file have such a fix. */
export function countFixes(checked: Checked, file: SiteText, wanted: WantedFixes): number {
  const choose = choice(file, wanted, fixesIn(checked));
  return checked.diagnostics.filter((diagnostic) => choose(diagnostic) !== undefined).length;
}

export function fixFile({ files }: Checked, file: SiteText, wanted: WantedFixes): Edit[] {
  const folder = new SiteFolder();
  for (const { uri, text, unreadable } of files) {
    if (unreadable === undefined) folder.set(uri, text);
    else folder.setUnreadable(uri, unreadable);
  }
  const fixed = fixAll(folder, choice(file, wanted)).texts.get(file.uri) ?? file.text;
  return lineEdits(file, fixed);
}

function choice({ uri }: SiteText, wanted: WantedFixes, fixesOf = givenBy): ChooseFix {
  const ofFile = (fix: Fix | undefined): Fix | undefined =>
    fix?.edits.every(({ at }) => fileOf(at).uri === uri) === true ? fix : undefined;
  if (wanted === 'safe')
    return (diagnostic) => (isIn(diagnostic, uri) ? ofFile(fixesOf(diagnostic).find(({ safe }) => safe)) : undefined);
  return (diagnostic) =>
    diagnostic.rule.id === wanted.rule && isIn(diagnostic, uri) ? ofFile(fixesOf(diagnostic)[0]) : undefined;
}

function givenBy({ fixes }: Diagnostic): readonly Fix[] {
  return fixes?.() ?? [];
}

function isIn({ at }: Diagnostic, uri: string): boolean {
  return fileOf(at).uri === uri;
}
