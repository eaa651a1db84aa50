/** The part that several wrong places have in common on the way of their signals. */

import { grouped } from '../grouped.ts';
import type { Device } from '../site/model.ts';
import type { Signal } from './signals.ts';

/** A place where something is wrong, with the signal that is worst there. */
export interface Affected {
  readonly signal: Signal;
}

export interface CommonCause<T> {
  /** The aerial or the last amplifier that all of them are behind; `undefined` for a single place. */
  readonly behind: Device | undefined;
  /** In their order. */
  readonly affected: readonly T[];
}

/**
 * Groups wrong places by the aerial or amplifier that they are behind, if at least half of all places behind it are
 * wrong.
 *
 * @param right a signal of each such place where nothing is wrong
 */
export function commonCauses<T extends Affected>(wrong: readonly T[], right: readonly Signal[]): CommonCause<T>[] {
  if (wrong.length < 2) return wrong.map((one) => ({ behind: undefined, affected: [one] }));
  const ways = new Map(wrong.map((one) => [one, inFrontOf(one.signal)]));
  const surplus = new Map<Device, number>();
  const count = (devices: readonly Device[], by: number): void => {
    for (const device of devices) surplus.set(device, (surplus.get(device) ?? 0) + by);
  };
  for (const way of ways.values()) count(way, 1);
  for (const signal of right) count(inFrontOf(signal), -1);
  const cause = (one: T): Device | undefined => ways.get(one)?.find((device) => (surplus.get(device) ?? 0) >= 0);
  const together = [...grouped(wrong, cause).values()].map((affected): CommonCause<T> => {
    const [first = [], ...others] = affected.map((one) => ways.get(one) ?? []);
    const behind = first.findLast((device) => others.every((way) => way.includes(device)));
    return { behind: others.length === 0 ? undefined : behind, affected };
  });
  const alone = wrong.filter((one) => cause(one) === undefined);
  return [...together, ...alone.map((one) => ({ behind: undefined, affected: [one] }))];
}

/** The aerial or LNB, then the amplifiers, on the way. */
function inFrontOf({ source, steps }: Signal): Device[] {
  return [
    source.device,
    ...steps.flatMap(({ by }) => ('device' in by && by.device.kind === 'amplifier' ? [by.device] : [])),
  ];
}
