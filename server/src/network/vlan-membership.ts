/** Broadcast domains, and the VLANs of a port: what it sends and takes without a tag and with one (IEEE 802.1Q). */

import type { Port, Vlan } from '../site/model.ts';

/** What a broadcast frame reaches: a declared VLAN, or wiring without VLANs. */
export interface BroadcastDomain {
  readonly vlan: Vlan | undefined;
  /** The VLAN's name, or what the wiring consists of: `the link paddock-cam – recorder`. */
  readonly name: string;
}

export interface VlanMembership {
  readonly untagged: BroadcastDomain | undefined;
  /** Without the untagged one. */
  readonly tagged: readonly BroadcastDomain[];
}

export const NO_DOMAIN: VlanMembership = { untagged: undefined, tagged: [] };

/** The untagged one first. */
export function domainsOf({ untagged, tagged }: VlanMembership): readonly BroadcastDomain[] {
  return untagged === undefined ? tagged : [untagged, ...tagged];
}

/** What is set on the port itself; a VLAN that is not declared counts as none. */
export function vlanMembershipOf(port: Port, domains: ReadonlyMap<string, BroadcastDomain>): VlanMembership {
  if (!hasVlans(port)) return NO_DOMAIN;
  const domain = (name: string | undefined): BroadcastDomain | undefined =>
    name === undefined ? undefined : domains.get(name);
  if (port.trunk === undefined) return { untagged: domain(port.vlan ?? port.native), tagged: NO_DOMAIN.tagged };
  const untagged = domain(port.native ?? port.vlan);
  const tagged = new Set(port.trunk.flatMap((name) => domain(name) ?? []));
  if (untagged !== undefined) tagged.delete(untagged);
  return { untagged, tagged: [...tagged] };
}

export function hasVlans(port: Port): boolean {
  return port.vlan !== undefined || port.trunk !== undefined || port.native !== undefined;
}

/** Between two ports with VLANs a frame passes where both mean the same by its tag, or by its lack of one. */
export function agreed(a: VlanMembership, b: VlanMembership): VlanMembership {
  if (a.tagged.length === 0 && b.tagged.length === 0) return a.untagged === b.untagged ? a : NO_DOMAIN;
  return {
    untagged: a.untagged === b.untagged ? a.untagged : undefined,
    tagged: a.tagged.filter((domain) => b.tagged.includes(domain)),
  };
}

/**
 * A host is in the VLAN of the port it is cabled to, and in those tagged ones that it has a trunk for. It does not
 * accept a VLAN untagged that it expects tagged.
 */
export function atHost(wire: VlanMembership, host: VlanMembership): VlanMembership {
  if (host.tagged.length === 0) return wire.tagged.length === 0 ? wire : { untagged: wire.untagged, tagged: [] };
  return {
    untagged: wire.untagged !== undefined && host.tagged.includes(wire.untagged) ? undefined : wire.untagged,
    tagged: wire.tagged.filter((domain) => host.tagged.includes(domain)),
  };
}

/** Whether nothing is to pass without a tag. */
export function tagsAll({ untagged, tagged }: VlanMembership): boolean {
  return untagged === undefined && tagged.length > 0;
}
