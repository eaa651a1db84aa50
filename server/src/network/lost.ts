/** What streams lose by an obstacle. */

import type { Obstacle, Unreached } from './delivery.ts';
import type { Stream } from '../site/model.ts';
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
