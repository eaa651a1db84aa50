/** What a refactoring is: another way to write the site, offered where the cursor stands. */

import type { Checked } from '../../../lint/check.ts';
import type { Edit } from '../../../site/edit.ts';
import type { SiteText } from '../../../site/folder.ts';

export interface RefactoringCursor {
  readonly checked: Checked;
  readonly file: SiteText;
  /** UTF-16 units from the start of the file. */
  readonly offset: number;
}

export interface Change {
  readonly edits: readonly Edit[];
  /** New files, by URI. */
  readonly made: ReadonlyMap<string, string>;
}

export interface Offered {
  readonly title: string;
  readonly kind: 'move' | 'rewrite';
  /** Whether files are made. */
  readonly makesFiles: boolean;
  /** Computed when the refactoring is chosen. */
  readonly change: () => Change;
}

/** Offers actions at the cursor: none where it does not apply, or could lose or change a meaning. */
export type Refactoring = (cursor: RefactoringCursor) => Offered[];
