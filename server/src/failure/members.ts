/** The links that cables make, found by the cable. */

import { grouped } from '../grouped.ts';
import { perObject } from '../memo.ts';
import type { MemberLink } from '../network/link.ts';
import type { Topology } from '../network/wiring.ts';
import type { Cable } from '../site/model.ts';

export function membersOf(topology: Topology, cable: Cable): readonly MemberLink[] {
  return byCable(topology).get(cable) ?? [];
}

const byCable = perObject(({ links }: Topology) =>
  grouped(
    links.flatMap(({ members }) => members),
    (member) => member.cable,
  ),
);
