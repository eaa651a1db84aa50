/** The interface by which a host would reach receivers that it misses now. */

import type { Site } from '../site/model.ts';
import type { Delivery } from './delivery.ts';
import type { Interface } from './interface.ts';
import type { Network } from './network.ts';

export interface BetterEgress {
  readonly by: Interface;
  /** Names of the receivers there. */
  readonly receivers: readonly string[];
}

/** The other interface of the source with most receivers; `undefined` where any receiver is at the present one. */
export function betterEgress(site: Site, { interfaces }: Network, delivery: Delivery): BetterEgress | undefined {
  const { source, leaves, unreached } = delivery;
  if (source === undefined || leaves === undefined || unreached.length === 0) return undefined;
  const others = interfaces.of(source).filter(({ domain }) => domain !== leaves.domain);
  if (others.length === 0) return undefined;
  const receivers = delivery.stream.receivers
    .flatMap((name) => site.deviceByName.get(name) ?? [])
    .filter((device) => device !== source);
  if (receivers.some((device) => interfaces.in(device, leaves.domain) !== undefined)) return undefined;
  let best: BetterEgress | undefined;
  for (const by of others) {
    const there = receivers.filter((device) => interfaces.in(device, by.domain) !== undefined).map(({ name }) => name);
    if (there.length > (best === undefined ? 0 : best.receivers.length)) best = { by, receivers: there };
  }
  return best;
}
