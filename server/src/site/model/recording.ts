/** What is recorded, and the disks for it. */

import type { Fact } from './fact.ts';

export interface Volume extends Fact {
  readonly host: string | undefined;
  /** Bytes of one disk where `disks` is declared, else of the whole. */
  readonly capacity: number | undefined;
  /** Where its host mounts it: as declared, else /srv and its name. */
  readonly path: string;
  readonly disks: number | undefined;
  readonly redundancy: 'none' | 'mirror' | 'raid5' | 'raid6' | 'raid10';
  /** Ten-thousandths. */
  readonly reserve: number;
  /** bytes/s */
  readonly sustainedWrite: number | undefined;
}

export interface Recording extends Fact {
  readonly stream: string | undefined;
  readonly volume: string | undefined;
  /** Milliseconds. */
  readonly segment: number | undefined;
  /** Milliseconds. */
  readonly keep: number | undefined;
  readonly file: string | undefined;
}
