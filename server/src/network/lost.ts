/** Receivers that streams lose because of an obstacle. */

import type { Obstacle, Unreached } from './delivery.ts';
import type { Device, Stream } from '../site/model.ts';
import { perObject } from '../memo.ts';
import type { Network } from './network.ts';

export interface LostReceiver {
  readonly stream: Stream;
  readonly receiver: string;
  readonly unreached: Unreached;
}

/** All lost receivers, in the order of the streams; kept, since many rules look them up. */
const allLost = perObject((deliveries: Network['deliveries']): readonly LostReceiver[] =>
  deliveries.flatMap(({ stream, unreached: all }) =>
    all.map((unreached) => ({ stream, receiver: unreached.receiver, unreached })),
  ),
);

/** The receivers that a stream does not reach for such a reason, in the order of the streams. */
export function receiversLostBy(
  { deliveries }: Pick<Network, 'deliveries'>,
  isWhy: (why: Obstacle) => boolean,
): LostReceiver[] {
  return allLost(deliveries).filter(({ unreached }) => isWhy(unreached.why));
}

/** The streams lost to or from some devices, and the obstacles, also those of other traffic. */
export function lossesAt(
  { deliveries, traffic }: Pick<Network, 'deliveries' | 'traffic'>,
  devices: readonly Device[],
): { readonly lost: readonly LostReceiver[]; readonly obstacles: readonly Obstacle[] } {
  const lost = deliveries.flatMap(({ stream, source, unreached: all }) =>
    all.flatMap((unreached) =>
      devices.some((device) => device === source || device.name === unreached.receiver)
        ? [{ stream, receiver: unreached.receiver, unreached }]
        : [],
    ),
  );
  const stopped = traffic.flatMap(({ from, to, obstacle }) =>
    obstacle !== undefined && devices.some((device) => device === from || device === to) ? [obstacle] : [],
  );
  return { lost, obstacles: [...lost.map(({ unreached }) => unreached.why), ...stopped] };
}
