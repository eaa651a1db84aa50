/** What was read for an audit, as pictures show it. */

import type { Readings } from './counters/sample.ts';
import type { Looked } from './recordings/looked.ts';

export interface Measured {
  /** Folders of volumes, and when they were as they are, ms since 1970. */
  readonly recordings?: { readonly looked: readonly Looked[]; readonly now: number };
  /** Counters, and whose they are where the files do not say. */
  readonly counters?: { readonly readings: Readings; readonly device: string | undefined };
}
