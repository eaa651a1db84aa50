/** Streams that end because the querier is gone: not at once, but when the last reports have aged out. */

import { bridgeOf, bridgesBetween } from '../network/bridge-tree.ts';
import type { Failed } from '../network/failed.ts';
import { oppositePort } from '../network/link.ts';
import type { Network } from '../network/network.ts';
import type { Site, Stream } from '../site/model.ts';
import type { Obstacle } from '../network/delivery.ts';

/** The parts of a network that decide memberships. */
export type Asked = Pick<Network, 'topology' | 'tree' | 'interfaces' | 'delivery'>;

const BY_MEMBERSHIP: ReadonlySet<Obstacle['obstacle']> = new Set(['report-stays', 'known-nearer', 'report-astray']);

/**
 * Whether a switch between a source and a receiver forgets that it has joined and then drops the group: a switch that
 * has lost its querier.
 */
export function forgetsIn(
  { deviceByName }: Pick<Site, 'deviceByName'>,
  before: Asked,
  after: Asked,
): (stream: Stream, receiver: string) => boolean {
  return (stream, receiver) => {
    const device = deviceByName.get(receiver);
    const { leaves, domains } = after.delivery(stream);
    if (stream.group === undefined || device === undefined || leaves === undefined) return false;
    return domains.some((domain) => {
      const at = after.interfaces.in(device, domain);
      const tree = after.tree(domain);
      const own = at === undefined ? undefined : bridgeOf(tree, oppositePort(at.link, at.port));
      if (own === undefined || tree.queried.has(own.component) || !wasAsked(before, domain.vlan)) return false;
      const first = leaves.domain === domain ? bridgeOf(tree, oppositePort(leaves.link, leaves.port)) : own;
      const passed = first === undefined ? undefined : bridgesBetween(first, own);
      return (passed ?? [own]).some(({ snoops, device: bridge }) => snoops && bridge.unregistered === 'drop');
    });
  };
}

function wasAsked({ topology, tree }: Asked, vlan: Site['vlans'][number] | undefined): boolean {
  return vlan !== undefined && tree(topology.domainOf(vlan)).queried.size > 0;
}

/** Whether a receiver's report gets no further than its own switch, for want of a querier. */
export function isWithoutQueries(after: Asked, stream: Stream, receiver: string): boolean {
  const lost = after.delivery(stream).unreached.find((one) => one.receiver === receiver);
  return lost !== undefined && BY_MEMBERSHIP.has(lost.why.obstacle);
}

/** Names of the networks that had a querier, and now have bridges without one. */
export function withoutQuerier(before: Asked, after: Asked, { devices }: Failed): string[] {
  return before.topology.domains.flatMap((domain) => {
    const { vlan } = domain;
    if (vlan === undefined || !wasAsked(before, vlan)) return [];
    const { bridges, queried } = after.tree(after.topology.domainOf(vlan));
    const snooping = [...bridges.values()].filter(({ device }) => device.snooping && !devices.has(device));
    return snooping.some(({ component }) => !queried.has(component)) ? [vlan.name] : [];
  });
}
