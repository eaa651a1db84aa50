/** The VLANs of a port or link in words. */

import type { Plan } from '../plan.ts';
import type { Port } from '../site/model.ts';
import type { BroadcastDomain, VlanMembership } from '../network/vlan-membership.ts';

/** `house; guests, video tagged`, as it is set on the port; empty where nothing is. */
export function vlanWords({ network }: Plan, port: Port): string {
  return membershipWords(network.topology.vlanMembershipOf(port));
}

/** The same where there is little room: `house +2 tagged`. */
export function shortVlanWords({ network }: Plan, port: Port): string {
  const { untagged, tagged } = network.topology.vlanMembershipOf(port);
  const [only, another] = tagged;
  if (only === undefined) return untagged?.name ?? 'no VLAN';
  if (untagged !== undefined) return `${untagged.name} +${tagged.length} tagged`;
  return another === undefined ? `${only.name} tagged` : `${tagged.length} tagged`;
}

/** Where there is least: `house +2`. */
export function leastVlanWords({ network }: Plan, port: Port): string {
  const { untagged, tagged } = network.topology.vlanMembershipOf(port);
  if (untagged === undefined) return tagged.length === 0 ? '' : `${tagged.length} tagged`;
  return tagged.length === 0 ? untagged.name : `${untagged.name} +${tagged.length}`;
}

export function membershipWords({ untagged, tagged }: VlanMembership): string {
  const names = (domains: readonly BroadcastDomain[]): string => domains.map(({ name }) => name).join(', ');
  const plain = untagged === undefined ? '' : untagged.name;
  if (tagged.length === 0) return plain;
  return `${plain === '' ? '' : `${plain}; `}${names(tagged)} tagged`;
}
