/** What streams lose by an obstacle. */

import type { Obstacle } from './delivery.ts';
import type { Stream } from '../site/model.ts';
import type { Network } from './network.ts';

export interface Lost {
  readonly stream: Stream;
  readonly receiver: string;
}

/** The receivers that a stream does not reach for such a reason, in the order of the streams. */
export function lostBy({ deliveries }: Pick<Network, 'deliveries'>, isWhy: (why: Obstacle) => boolean): Lost[] {
  return deliveries.flatMap(({ stream, unreached }) =>
    unreached.flatMap(({ receiver, why }) => (isWhy(why) ? [{ stream, receiver }] : [])),
  );
}
