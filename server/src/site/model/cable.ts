/** Cables, and what stands at their ends. */

import type { KeyPath } from '../../text/syntax.ts';
import type { CoaxFacts } from '../television/facts.ts';
import type { Fact } from './fact.ts';

/** An end of a cable as written. */
export interface CableEnd {
  readonly device: string;
  readonly port: string | undefined;
  readonly keyPath: KeyPath;
}

export interface Cable extends Fact {
  readonly from: CableEnd | undefined;
  readonly to: CableEnd | undefined;
  readonly type: string | undefined;
  /** Millimetres. */
  readonly length: number | undefined;
  /** The number of fibres in a fibre cable. */
  readonly fibres: number | undefined;
  readonly through: readonly CableEnd[];
  /** The duct that it shares with other cables. */
  readonly duct: string | undefined;
  readonly label: string | undefined;
  readonly coax: CoaxFacts;
}

/** An end of a cable as it is written: `core/16`, or a device alone. */
export function endName({ device, port }: CableEnd): string {
  return port === undefined ? device : `${device}/${port}`;
}
