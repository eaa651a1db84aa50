/** The voltage drop on coax on the way from a supply: each coax drops it by the sum of the currents through it. */

import type { Cable, Device } from '../site/model.ts';
import type { CurrentConsumer, CurrentFeed, CurrentSource } from './direct-current.ts';
import { loopResistance } from './run.ts';

export interface Drop {
  /** Ohms of all coax on the way; one without a length counts as 0. */
  readonly resistance: number;
  /** mV */
  readonly lost: number;
  /** The other devices that draw through the same coax. */
  readonly others: readonly Device[];
}

/** The drop on the way to a consumer, with the currents of all consumers. */
export function dropsOf(consumers: readonly CurrentConsumer[]): (consumer: CurrentConsumer, feed: CurrentFeed) => Drop {
  const drawn = new Map<object, Map<Cable, Map<Device, number>>>();
  for (const { device, feeds } of consumers)
    for (const { supply, by } of feeds) {
      const ofSupply = drawn.get(keyOf(supply)) ?? new Map<Cable, Map<Device, number>>();
      drawn.set(keyOf(supply), ofSupply);
      for (const cable of cablesOf(by)) {
        const through = ofSupply.get(cable) ?? new Map<Device, number>();
        ofSupply.set(cable, through.set(device, device.aerial?.current ?? 0));
      }
    }
  return ({ device }, { supply, by }) => {
    let [resistance, lost] = [0, 0];
    const others = new Set<Device>();
    for (const cable of cablesOf(by)) {
      const own = loopResistance(cable) ?? 0;
      resistance += own;
      for (const [by, current] of drawn.get(keyOf(supply))?.get(cable) ?? []) {
        lost += own * current;
        if (by !== device && own * current > 0) others.add(by);
      }
    }
    return { resistance, lost, others: [...others] };
  };
}

/** The identity of a supply. */
function keyOf({ connector, device }: CurrentSource): object {
  return connector ?? device;
}

function cablesOf(last: CurrentFeed['by']): Cable[] {
  const cables: Cable[] = [];
  for (let leg: CurrentFeed['by'] | undefined = last; leg !== undefined; leg = leg.before) cables.push(leg.cable);
  return cables;
}
