/** What ends because nobody asks for memberships any more: not at once, but when the last answer is too old. */

import type { Obstacle } from '../network/delivery.ts';
import type { Failed } from '../network/failed.ts';
import type { Network } from '../network/network.ts';
import type { Stream } from '../site/model.ts';
import { groupMembershipInterval } from '../standards/igmp.ts';

const BY_MEMBERSHIP: ReadonlySet<Obstacle['obstacle']> = new Set(['report-stays', 'known-nearer', 'report-astray']);

/** Seconds until a picture that is lost is gone. */
export function lostFor(after: Network, stream: Stream, receiver: string): number {
  const lost = after.delivery(stream).unreached.find((one) => one.receiver === receiver);
  return lost !== undefined && BY_MEMBERSHIP.has(lost.why.obstacle) ? groupMembershipInterval() : 0;
}

/** Names of the networks in which somebody asked, and where there are bridges left that nobody asks. */
export function withoutQuerier(before: Network, after: Network, { devices }: Failed): string[] {
  return before.topology.domains.flatMap((domain) => {
    const { vlan } = domain;
    if (vlan === undefined || before.tree(domain).queried.size === 0) return [];
    const { bridges, queried } = after.tree(after.topology.domainOf(vlan));
    const snooping = [...bridges.values()].filter(({ device }) => device.snooping && !devices.has(device));
    return snooping.some(({ component }) => !queried.has(component)) ? [vlan.name] : [];
  });
}
