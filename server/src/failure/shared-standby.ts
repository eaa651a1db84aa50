/** Cables and switches that stand in for each other but fail together: they share a duct or a supply. */

import { grouped } from '../grouped.ts';
import type { MemberLink } from '../network/link.ts';
import type { Cable, Device } from '../site/model.ts';
import { downWith } from './down.ts';
import { type Works, deviceElement } from './element.ts';

export interface SharedStandby {
  /** A duct, a UPS or a circuit, by name. */
  readonly shared: string;
  /** Cables of which any one may fail, but not all together. */
  readonly cables: readonly Cable[];
  readonly devices: readonly Device[];
  /** Switches that are then cut off from others. */
  readonly cutOff: readonly Device[];
}

/** The most cables in one duct or on one supply, as each is tried alone; no house has so many. */
const MOST = 64;

/** The most cables and devices that are tried, in half a second: a hundred ducts of a site of a thousand switches. */
const MOST_LOOKED_AT = 2_000_000;

export function sharedStandbys(works: Works): SharedStandby[] {
  return [...inDucts(works), ...onSupplies(works)];
}

function inDucts(works: Works): SharedStandby[] {
  const { site } = works;
  const ducts = grouped(site.cables, ({ duct }) => duct);
  const members = joiningBridges(works);
  const joining = new Set(members.map(({ cable }) => cable));
  let left = MOST_LOOKED_AT;
  return [...ducts].flatMap(([shared, all]): SharedStandby[] => {
    const cables = all.filter((cable) => joining.has(cable));
    if (cables.length < 2 || cables.length > MOST || left < 0) return [];
    left -= (2 * cables.length + 1) * members.length;
    const cut = (gone: readonly Cable[]): Device[] =>
      cutOffBy(
        works,
        members.filter(({ cable }) => !gone.includes(cable)),
        new Set(),
      );
    // Switches that a single cable cuts off have no standby.
    const alone = new Set(cables.flatMap((cable) => cut([cable])));
    const cutOff = cut(cables).filter((device) => !alone.has(device));
    const standing = cables.filter((cable) => cut([cable]).length === 0);
    return cutOff.length === 0 || standing.length < 2 ? [] : [{ shared, cables: standing, devices: [], cutOff }];
  });
}

function onSupplies(works: Works): SharedStandby[] {
  const { site } = works;
  const sources = site.devices.filter(({ kind }) => kind === 'ups' || kind === 'circuit');
  const places = new Map(site.devices.map((device, index) => [device, index]));
  const order = (device: Device): number => places.get(device) ?? 0;
  if (sources.length === 0) return [];
  const members = joiningBridges(works);
  let left = MOST_LOOKED_AT;
  return sources.flatMap((source): SharedStandby[] => {
    if (left < 0) return [];
    const dead = downWith(works, deviceElement(source)).devices;
    left -= dead.size;
    const devices = [...dead].filter(({ bridging }) => bridging).sort((a, b) => order(a) - order(b));
    if (devices.length < 2 || devices.length > MOST) return [];
    left -= (2 * devices.length + 1) * members.length;
    const cut = (gone: ReadonlySet<Device>): Device[] =>
      cutOffBy(
        works,
        members.filter(({ a, b }) => !gone.has(a.device) && !gone.has(b.device)),
        gone,
      );
    const alone = new Set(devices.flatMap((device) => cut(new Set([device]))));
    const cutOff = cut(new Set(devices)).filter((device) => !alone.has(device));
    const standing = devices.filter((device) => cut(new Set([device])).length === 0);
    return cutOff.length === 0 || standing.length < 2
      ? []
      : [{ shared: source.name, cables: [], devices: standing, cutOff }];
  });
}

/** Cables between devices that forward frames. */
function joiningBridges({ network }: Works): MemberLink[] {
  return network.topology.links.flatMap(({ members }) => members).filter(({ a, b }) => a.forwards && b.forwards);
}

/** Of the bridges that are left, those without the largest part of what was joined with them before. */
function cutOffBy(works: Works, left: readonly MemberLink[], gone: ReadonlySet<Device>): Device[] {
  const before = partsOf(joiningBridges(works));
  const pieceOf = new Map(partsOf(left).flatMap((part) => part.map((device) => [device, part] as const)));
  return before.flatMap((part) => {
    const pieces = new Map<readonly Device[], Device[]>();
    for (const device of part) {
      if (gone.has(device)) continue;
      const piece = pieceOf.get(device) ?? [device];
      const own = pieces.get(piece);
      if (own === undefined) pieces.set(piece, [device]);
      else own.push(device);
    }
    const [, ...others] = [...pieces.values()].sort((a, b) => b.length - a.length);
    return others.flat();
  });
}

function neighboursOf(around: Map<Device, Device[]>, device: Device): Device[] {
  const known = around.get(device) ?? [];
  around.set(device, known);
  return known;
}

/** The parts that the cables join. */
function partsOf(members: readonly MemberLink[]): Device[][] {
  const around = new Map<Device, Device[]>();
  for (const { a, b } of members) {
    neighboursOf(around, a.device).push(b.device);
    neighboursOf(around, b.device).push(a.device);
  }
  const seen = new Set<Device>();
  return [...around.keys()].flatMap((start) => {
    if (seen.has(start)) return [];
    seen.add(start);
    const part = [start];
    for (const device of part)
      for (const next of around.get(device) ?? []) {
        if (seen.has(next)) continue;
        seen.add(next);
        part.push(next);
      }
    return [part];
  });
}
