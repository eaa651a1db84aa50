/** Both directions of each link, in the order of the links. */

import type { Hop } from '../server/src/network/link.ts';
import type { Plan } from '../server/src/plan.ts';

export function directionsOf({ network }: Plan): Hop[] {
  return network.topology.links.flatMap((link) => [
    { link, out: link.a },
    { link, out: link.b },
  ]);
}
