/** Readings of an audit, for drawings. */

import type { Readings } from './counters/sample.ts';
import type { Looked } from './recordings/looked.ts';

export interface Measured {
  /** Folders of volumes, and the time of their state, ms since 1970. */
  readonly recordings?: { readonly looked: readonly Looked[]; readonly now: number };
  /** Counters, and their device where the files do not name it. */
  readonly counters?: { readonly readings: Readings; readonly device: string | undefined };
}
