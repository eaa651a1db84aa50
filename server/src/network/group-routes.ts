/** The routes by which a device sends a group to its receivers. */

import { contains, isMulticast } from '../standards/ipv4.ts';
import type { Device, HostRoute, Port, Site } from '../site/model.ts';
import { type BroadcastDomain, domainsOf } from './vlan-membership.ts';
import type { Topology } from './wiring.ts';

/** The length of the prefix of 224.0.0.0/4, all multicast. */
const ALL_GROUPS = 4;

export interface GroupRoutes {
  /** Whether the route for the group leads into a network of a receiver. */
  readonly leavesThere: (group: number) => boolean;
  /** Routes for a part of all groups. */
  readonly routes: readonly HostRoute[];
}

export function groupRoutes(site: Site, topology: Topology, source: Device, receivers: readonly string[]): GroupRoutes {
  const domainsAt = (port: Port | undefined): readonly BroadcastDomain[] => {
    const link = port === undefined ? undefined : topology.linkAt(port);
    return link === undefined ? [] : domainsOf(link);
  };
  const theirs = new Set(receivers.flatMap((name) => site.deviceByName.get(name)?.ports.flatMap(domainsAt) ?? []));
  const leavesThere = (group: number): boolean => {
    const [route] = source.routes.filter(({ to }) => contains(to, group)).sort((x, y) => y.to.prefix - x.to.prefix);
    return route !== undefined && domainsAt(source.portByName.get(route.port)).some((domain) => theirs.has(domain));
  };
  return { leavesThere, routes: source.routes.filter(({ to }) => to.prefix > ALL_GROUPS && isMulticast(to.network)) };
}
