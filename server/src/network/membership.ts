/** The VLANs of a port: what it sends and takes without a tag and with one (IEEE 802.1Q). */

import type { ByName } from '../site/by-name.ts';
import type { Port, Site, Vlan } from '../site/model.ts';

/** In the place of the index of a network. */
export const NONE = -1;

/** Networks by index. */
export interface Membership {
  readonly untagged: number;
  /** Without the untagged one. */
  readonly tagged: readonly number[];
}

export const NO_NETWORK: Membership = { untagged: NONE, tagged: [] };

const memberships = new WeakMap<Port, { readonly vlans: ByName<Vlan>; readonly membership: Membership }>();

/** What is set on the port itself. */
export function membershipOf(site: Site, port: Port): Membership {
  if (!hasVlans(port)) return NO_NETWORK;
  if (port.trunk === undefined) return { untagged: indexOf(site, port.vlan ?? port.native), tagged: NO_NETWORK.tagged };
  const known = memberships.get(port);
  if (known?.vlans === site.vlanByName) return known.membership;
  const untagged = indexOf(site, port.native ?? port.vlan);
  const tagged = [...new Set(port.trunk.map((name) => indexOf(site, name)))].filter(
    (network) => network !== NONE && network !== untagged,
  );
  const membership = { untagged, tagged };
  memberships.set(port, { vlans: site.vlanByName, membership });
  return membership;
}

function indexOf({ vlanByName }: Site, name: string | undefined): number {
  return name === undefined ? NONE : (vlanByName.get(name)?.index ?? NONE);
}

export function hasVlans(port: Port): boolean {
  return port.vlan !== undefined || port.trunk !== undefined || port.native !== undefined;
}

/** Between two ports with VLANs a frame passes where both mean the same by its tag, or by its lack of one. */
export function agreed(a: Membership, b: Membership): Membership {
  if (a.tagged.length === 0 && b.tagged.length === 0) return a.untagged === b.untagged ? a : NO_NETWORK;
  return {
    untagged: a.untagged === b.untagged ? a.untagged : NONE,
    tagged: a.tagged.filter((network) => b.tagged.includes(network)),
  };
}

/** A host is in the VLAN of the port it is cabled to, and in those tagged ones that it has a trunk for. */
export function atHost(wire: Membership, host: Membership): Membership {
  if (host.tagged.length === 0) return wire.tagged.length === 0 ? wire : { untagged: wire.untagged, tagged: [] };
  return { untagged: wire.untagged, tagged: wire.tagged.filter((network) => host.tagged.includes(network)) };
}
