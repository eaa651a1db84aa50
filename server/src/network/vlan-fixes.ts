/** Fixes that give two ends of a cable the same VLANs. */

import { type Fix, fixOf } from '../site/edit.ts';
import { type Port, type Site, portName } from '../site/model.ts';
import { type PortVlans, setVlans, setVlansOfRange, vlansOf } from '../site/port-vlans.ts';
import { contains } from '../standards/ipv4.ts';
import { asName, list } from '../text/words.ts';
import type { BroadcastDomain } from './vlan-membership.ts';
import type { Topology } from './wiring.ts';

/** A port whose VLANs differ from those of its far end. */
export interface Differing {
  readonly set: Port;
  /** The far end, where it has more VLANs. */
  readonly more?: Port;
}

export function vlanNames(domains: readonly (BroadcastDomain | undefined)[]): string[] {
  return domains.flatMap((domain) => domain?.vlan?.name ?? []);
}

/** `a trunk of house, video with native house` */
export function vlanListWords(topology: Topology, port: Port): string {
  const { untagged, tagged } = topology.vlanMembershipOf(port);
  const without = vlanNames([untagged]);
  if (tagged.length === 0) return `an access port of ${list(without)}`;
  return `a trunk of ${list(vlanNames(tagged))}${without.length === 0 ? '' : ` with native ${list(without)}`}`;
}

/** Sets a whole range to the VLANs of its far ends, where these are all alike and nothing else is cabled to it. */
export function setRangeLikeFarEnds(topology: Topology, { set, more }: Differing, others: readonly Differing[]): Fix[] {
  if (more === undefined) return [];
  const [mine, theirs] = [vlansOf(set), vlansOf(more)];
  const isAlike = others.every((other) => other.more !== undefined && hasSame(vlansOf(other.more), theirs));
  const own = set.keyPath.join(' ');
  const mismatched = new Set([set, ...others.map((other) => other.set)]);
  const isWhole = set.device.ports.every(
    (port) => port.keyPath.join(' ') !== own || topology.linkAt(port) === undefined || mismatched.has(port),
  );
  const lacksNone = (mine.trunk ?? []).every((name) => theirs.trunk?.includes(name) === true);
  if (!isAlike || !isWhole || !lacksNone) return [];
  const range = `${set.device.name}/${set.keyPath[1] ?? set.name}`;
  const edits = setVlansOfRange(set, theirs);
  return edits === undefined ? [] : fixOf(`Set ${range} like the far ends of its cables`, ...edits);
}

function hasSame(one: PortVlans, other: PortVlans): boolean {
  const words = ({ vlan = '', native = '', trunk = [] }: PortVlans): string => [vlan, native, ...trunk].join(' ');
  return words(one) === words(other);
}

/** Gives two trunks all VLANs of both; sets other ports like the far end. */
export function setAlike(topology: Topology, lacking: Port, more: Port): Fix[] {
  const fixes: Fix[] = [];
  const offer = (title: string, changes: readonly (readonly [Port, PortVlans])[]): void => {
    const edits = changes.map(([port, vlans]) => setVlans(port, vlans));
    const possible = edits.flatMap((edit) => edit ?? []);
    if (edits.every((edit) => edit !== undefined) && possible.length > 0)
      fixes.push({ title, safe: false, edits: possible });
  };
  const [mine, theirs] = [vlansOf(lacking), vlansOf(more)];
  if (
    mine.trunk !== undefined &&
    theirs.trunk !== undefined &&
    (mine.native ?? theirs.native) === (theirs.native ?? mine.native)
  ) {
    const native = mine.native ?? theirs.native;
    const trunk = [...new Set([...theirs.trunk, ...mine.trunk])];
    offer(`Let ${list(trunk)} cross both ${portName(more)} and ${portName(lacking)}`, [
      [lacking, { trunk, native }],
      [more, { trunk, native }],
    ]);
    if (trunk.length === theirs.trunk.length) return fixes;
  }
  offer(`Set ${portName(lacking)} as ${vlanListWords(topology, more)}, like ${portName(more)}`, [[lacking, theirs]]);
  offer(`Set ${portName(more)} as ${vlanListWords(topology, lacking)}, like ${portName(lacking)}`, [[more, mine]]);
  return fixes;
}

/** Gives the host a trunk of the VLANs of its addresses; else the switch port its VLAN without a tag. */
export function setForHost(site: Site, from: Port, host: Port): Fix[] {
  const named = (from.trunk ?? []).filter((name) => host.addresses.some(({ vlan }) => vlan === name));
  if (named.length > 0) {
    const edits = setVlans(host, { trunk: named });
    return fixOf(`Give ${portName(host)} a trunk of ${list(named)}`, ...(edits ?? []));
  }
  const vlan = site.vlans.find(
    ({ subnet }) => subnet !== undefined && host.addresses.some(({ address }) => contains(subnet, address)),
  );
  if (vlan === undefined) return [];
  const access = setVlans(from, { vlan: vlan.name });
  const native = setVlans(from, { trunk: from.trunk, native: vlan.name });
  return [
    ...fixOf(`Make ${portName(from)} an access port of ${asName(vlan.name)}`, ...(access ?? [])),
    ...fixOf(`Make ${asName(vlan.name)} the native VLAN of ${portName(from)}`, ...(native ?? [])),
  ];
}
