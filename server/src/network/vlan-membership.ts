/** Broadcast domains, and the VLANs that a port sends and accepts, without a tag and with one (IEEE 802.1Q). */

import type { Port, Vlan } from '../site/model.ts';

/** The reach of a broadcast frame: a declared VLAN, or wiring without VLANs. */
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

/** All domains, the untagged one first. */
export function domainsOf({ untagged, tagged }: VlanMembership): readonly BroadcastDomain[] {
  return untagged === undefined ? tagged : [untagged, ...tagged];
}

/** The VLANs that the port itself declares; an undeclared VLAN counts as none. */
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

/** A frame passes between two ports where both put it into the same VLAN, with a tag or without. */
export function agreed(a: VlanMembership, b: VlanMembership): VlanMembership {
  if (a.tagged.length === 0 && b.tagged.length === 0) return a.untagged === b.untagged ? a : NO_DOMAIN;
  return {
    untagged: a.untagged === b.untagged ? a.untagged : undefined,
    tagged: a.tagged.filter((domain) => b.tagged.includes(domain)),
  };
}

/**
 * A host is in the VLAN of the port that it is cabled to, and in the tagged ones of its trunk. It does not accept
 * untagged a VLAN that it expects tagged.
 */
export function atHost(wire: VlanMembership, host: VlanMembership): VlanMembership {
  if (host.tagged.length === 0) return wire.tagged.length === 0 ? wire : { untagged: wire.untagged, tagged: [] };
  return {
    untagged: wire.untagged !== undefined && host.tagged.includes(wire.untagged) ? undefined : wire.untagged,
    tagged: wire.tagged.filter((domain) => host.tagged.includes(domain)),
  };
}

/** Whether a port declares only tagged VLANs. */
export function tagsAll({ untagged, tagged }: VlanMembership): boolean {
  return untagged === undefined && tagged.length > 0;
}
