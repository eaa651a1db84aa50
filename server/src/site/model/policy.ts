/** What the owner asks for: thresholds, how long recordings are kept, severities, acceptances. */

import type { KeyPath } from '../../text/syntax.ts';
import type { Item } from '../item.ts';
import type { AerialPolicy } from '../television/facts.ts';

/** As declared; ten-thousandths of the whole. */
export interface Threshold {
  readonly warn: number | undefined;
  readonly limit: number | undefined;
}

/** The site's policies, with defaults for what it does not declare; thresholds in ten-thousandths of the whole. */
export interface Policies {
  readonly linkLoad: { readonly warn: number; readonly limit: number };
  readonly airtime: { readonly warn: number; readonly limit: number };
  readonly volumeFill: { readonly warn: number | undefined; readonly limit: number };
  readonly retention: readonly Retention[];
  readonly aerialSystem: AerialPolicy;
  /** How long things are to go on without mains, ms. */
  readonly runtime: { readonly cameras: number | undefined };
}

export interface Retention {
  readonly item: Item;
  readonly keyPath: KeyPath;
  readonly recordings: readonly string[];
  /** Milliseconds. */
  readonly atLeast: number | undefined;
  readonly atMost: number | undefined;
}

export type Severity = 'error' | 'warning' | 'information' | 'hint';

export interface Acceptance {
  readonly item: Item;
  readonly keyPath: KeyPath;
  readonly rule: string;
  readonly at: string;
  readonly because: string;
}

export interface Lint {
  readonly severities: ReadonlyMap<string, Severity | 'off'>;
  readonly acceptances: readonly Acceptance[];
}
