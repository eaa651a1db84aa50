/** Both directions of each link, in the order of the links. */

import type { Direction } from '../server/src/network/link.ts';
import type { Plan } from '../server/src/plan.ts';

export function directionsOf({ network }: Plan): Direction[] {
  return network.topology.links.flatMap((link) => [
    { link, out: link.a },
    { link, out: link.b },
  ]);
}
