/** What a name stands for. */

import type { NamedSection } from '../../site/declared.ts';

export type NamedKind = NamedSection | 'rules' | 'ports';

/** A thing that has a name; that of a port is `device/port`. */
export interface Named {
  readonly kind: NamedKind;
  readonly name: string;
}
