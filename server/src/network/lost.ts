/** What streams lose by an obstacle. */

import type { Obstacle, Unreached } from './delivery.ts';
import type { Device, Stream } from '../site/model.ts';
import type { Network } from './network.ts';

export interface Lost {
  readonly stream: Stream;
  readonly receiver: string;
  readonly unreached: Unreached;
}

/** The receivers that a stream does not reach for such a reason, in the order of the streams. */
export function lostBy({ deliveries }: Pick<Network, 'deliveries'>, isWhy: (why: Obstacle) => boolean): Lost[] {
  return deliveries.flatMap(({ stream, unreached: all }) =>
    all.flatMap((unreached) => {
      const { receiver, why } = unreached;
      return isWhy(why) ? [{ stream, receiver, unreached }] : [];
    }),
  );
}

/** What does not get to devices or from them, and why: also of other traffic. */
export function lostAt(
  { deliveries, traffic }: Pick<Network, 'deliveries' | 'traffic'>,
  devices: readonly Device[],
): { readonly lost: readonly Lost[]; readonly obstacles: readonly Obstacle[] } {
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
