/** How long the policies together ask recordings to be kept. */

import { perObject } from '../memo.ts';
import type { Retention } from './model.ts';

export interface Bound {
  /** Milliseconds. */
  readonly time: number;
  /** The policy that asks for it. */
  readonly policy: Retention;
}

export interface RetentionBounds {
  readonly least: Bound | undefined;
  readonly most: Bound | undefined;
}

const UNBOUND: RetentionBounds = { least: undefined, most: undefined };

/** By the name of the recording: the longest `at-least` and the shortest `at-most` of all policies. */
export const retentionBounds = perObject((policies: readonly Retention[]): ReadonlyMap<string, RetentionBounds> => {
  const bounds = new Map<string, RetentionBounds>();
  for (const policy of policies) {
    const { atLeast, atMost } = policy;
    for (const name of policy.recordings) {
      const { least, most } = bounds.get(name) ?? UNBOUND;
      bounds.set(name, {
        least: atLeast !== undefined && atLeast > (least?.time ?? -1) ? { time: atLeast, policy } : least,
        most: atMost !== undefined && atMost < (most?.time ?? Infinity) ? { time: atMost, policy } : most,
      });
    }
  }
  return bounds;
});

export function retentionBoundsOf(policies: readonly Retention[], recording: string): RetentionBounds {
  return retentionBounds(policies).get(recording) ?? UNBOUND;
}
