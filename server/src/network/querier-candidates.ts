/**
 * The devices that may ask for memberships in a network; the one with the lowest address does (RFC 3376 §6.6.2, read).
 */

import { type Device, ownAddresses } from '../site/model.ts';
import { contains } from '../standards/ipv4.ts';
import { canQuery } from './can-query.ts';
import type { Interfaces } from './interfaces.ts';
import type { BroadcastDomain } from './vlan-membership.ts';

/** The named querier and the multicast routers with an interface there, in the order in which they are elected. */
export function querierCandidates(
  domain: BroadcastDomain,
  named: Device | undefined,
  multicastRouters: readonly Device[],
  interfaces: Interfaces,
): Device[] {
  const routers = multicastRouters.filter((router) => router !== named && interfaces.in(router, domain) !== undefined);
  const askers = named !== undefined && canQuery(named) ? [named, ...routers] : routers;
  if (askers.length < 2) return askers;
  return askers.sort((a, b) => addressIn(interfaces, domain, a) - addressIn(interfaces, domain, b));
}

/** Infinity where the address is not known, which is elected last. A switch asks from its management address. */
function addressIn(interfaces: Interfaces, domain: BroadcastDomain, device: Device): number {
  const routed = interfaces.in(device, domain)?.address;
  if (routed !== undefined) return routed;
  const subnet = domain.vlan?.subnet;
  const management = ownAddresses({ ...device, ports: [] }).find(({ address, vlan }) =>
    vlan === undefined ? subnet !== undefined && contains(subnet, address) : vlan === domain.vlan?.name,
  );
  return management?.address ?? Infinity;
}
