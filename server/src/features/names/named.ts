/** What a name stands for. */

export type NamedKind = 'devices' | 'vlans' | 'streams' | 'volumes' | 'recordings' | 'rules' | 'ports';

/** A thing that has a name; of a port the name is `device/port`. */
export interface Named {
  readonly kind: NamedKind;
  readonly name: string;
}
