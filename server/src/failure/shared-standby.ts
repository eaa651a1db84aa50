/** Cables and switches that stand in for each other, and fail together: both lie in one duct, or hang on one supply. */

import type { Member } from '../network/link.ts';
import type { Cable, Device } from '../site/model.ts';
import { downWith } from './down.ts';
import type { Works } from './element.ts';

export interface SharedStandby {
  /** A duct, a UPS or a circuit, by name. */
  readonly shared: string;
  /** Of which each may fail alone, and not all together. */
  readonly cables: readonly Cable[];
  readonly devices: readonly Device[];
  /** Switches that are then cut off from others. */
  readonly cutOff: readonly Device[];
}

/** Each is tried alone, and no house has so many on one thing. */
const MOST = 64;

export function sharedStandbys(works: Works): SharedStandby[] {
  return [...inDucts(works), ...onSupplies(works)];
}

function inDucts(works: Works): SharedStandby[] {
  const { site } = works;
  const ducts = new Map<string, Cable[]>();
  for (const cable of site.cables)
    if (cable.duct !== undefined) ducts.set(cable.duct, [...(ducts.get(cable.duct) ?? []), cable]);
  const members = joiningBridges(works);
  return [...ducts].flatMap(([shared, all]): SharedStandby[] => {
    const cables = all.filter((cable) => members.some((member) => member.cable === cable));
    if (cables.length < 2 || cables.length > MOST) return [];
    const cut = (gone: readonly Cable[]): Device[] =>
      cutOffBy(
        works,
        members.filter(({ cable }) => !gone.includes(cable)),
        new Set(),
      );
    // What one of them cuts off already is no standby of another.
    const alone = new Set(cables.flatMap((cable) => cut([cable])));
    const cutOff = cut(cables).filter((device) => !alone.has(device));
    const standing = cables.filter((cable) => cut([cable]).length === 0);
    return cutOff.length === 0 || standing.length < 2 ? [] : [{ shared, cables: standing, devices: [], cutOff }];
  });
}

function onSupplies(works: Works): SharedStandby[] {
  const { site } = works;
  const sources = site.devices.filter(({ kind }) => kind === 'ups' || kind === 'circuit');
  if (sources.length === 0) return [];
  const members = joiningBridges(works);
  return sources.flatMap((source): SharedStandby[] => {
    const element = { kind: 'device', name: source.name, cables: [], devices: [source], volume: undefined } as const;
    const dead = downWith(works, element).devices;
    const devices = site.devices.filter((device) => dead.has(device) && device.bridging);
    if (devices.length < 2 || devices.length > MOST) return [];
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
function joiningBridges({ network }: Works): Member[] {
  return network.topology.links.flatMap(({ members }) => members).filter(({ a, b }) => a.forwards && b.forwards);
}

/** Of the bridges that are left, those without the largest part of what was joined with them before. */
function cutOffBy(works: Works, left: readonly Member[], gone: ReadonlySet<Device>): Device[] {
  const before = partsOf(joiningBridges(works));
  const pieceOf = new Map(partsOf(left).flatMap((part) => part.map((device) => [device, part] as const)));
  return before.flatMap((part) => {
    const pieces = new Map<readonly Device[], Device[]>();
    for (const device of part) {
      if (gone.has(device)) continue;
      const piece = pieceOf.get(device) ?? [device];
      pieces.set(piece, [...(pieces.get(piece) ?? []), device]);
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

/** What the cables join, part by part. */
function partsOf(members: readonly Member[]): Device[][] {
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
