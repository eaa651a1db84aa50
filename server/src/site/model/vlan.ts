/** VLANs with their networks. */

import type { ParsedSubnet } from '../../standards/ipv4.ts';
import type { Fact } from './fact.ts';

export interface Vlan extends Fact {
  readonly id: number | undefined;
  readonly subnet: ParsedSubnet | undefined;
  readonly gateway: string | undefined;
  readonly querier: string | undefined;
  /** The device that its hosts set their clocks by. */
  readonly clock: string | undefined;
  readonly pool: { readonly first: number; readonly last: number } | undefined;
  /** Names of the VLANs that its hosts may ask; `undefined` for all. */
  readonly reaches: readonly string[] | undefined;
  /** Whether anything passes between it and the Internet. */
  readonly internet: boolean;
}
