/** Free multicast groups. */

import { perObject } from '../../memo.ts';
import { formatAddress, isMulticast } from '../../standards/ipv4.ts';
import {
  type GroupBlock,
  blockOf,
  macKey,
  onAlwaysFloodedMac,
  scopeRelativeReserved,
} from '../../standards/multicast.ts';
import { type Fix, fixOf, setValue } from '../edit.ts';
import type { Site, Stream } from '../model.ts';

/** 239.192.0.0, the first of the organization-local scope (RFC 2365 §6.2). */
export const ORGANIZATION_LOCAL = 0xefc00000;

/**
 * The first group above `near` that nobody uses and that shares no MAC address with one in use or one that is always
 * flooded; the lowest where none is left above. It is in the scope of `near` if groups may be taken from that, else in
 * the scope of most groups of the site, else in the organization-local one.
 */
export function nextFreeGroup(site: Site, near?: number): number | undefined {
  for (const group of freeGroups(site, near)) return group;
  return undefined;
}

/** All free groups, in the order in which they are given out; no two share a MAC address. */
export function* freeGroups(site: Site, near?: number): Generator<number> {
  const { groups, keys } = groupsInUse(site.streams);
  const given = new Set<number>();
  const block = scopeNear(groups, near);
  const isInBlock = (group: number): boolean => group >= block.first && group <= block.last;
  const from =
    near !== undefined && isInBlock(near)
      ? near
      : (groups.filter(isInBlock).toSorted((a, b) => a - b)[0] ?? block.first);
  const isFree = (group: number): boolean =>
    !keys.has(macKey(group)) &&
    !given.has(macKey(group)) &&
    !onAlwaysFloodedMac(group) &&
    !scopeRelativeReserved(group);
  const take = (group: number): number => {
    given.add(macKey(group));
    return group;
  };
  // The lowest address of the block comes last: it looks like the number of a network.
  for (let group = from + 1; group <= block.last; group++) if (isFree(group)) yield take(group);
  for (let group = block.first + 1; group <= from; group++) if (isFree(group)) yield take(group);
}

/** The number of `freeGroups`, without going through them. */
export function countFreeGroups(site: Site, near?: number): number {
  const { groups, keys } = groupsInUse(site.streams);
  const { first, last } = scopeNear(groups, near);
  // Groups are left out in blocks of 256.
  const used = new Map<number, number>();
  for (const key of keys) used.set(key >>> 8, (used.get(key >>> 8) ?? 0) + 1);
  let free = 0;
  for (let group = first; group <= Math.min(last, first + ADDRESSES - 1); group += 256)
    if (!onAlwaysFloodedMac(group) && !scopeRelativeReserved(group)) free += 256 - (used.get(macKey(group) >>> 8) ?? 0);
  const isFirstFree = !onAlwaysFloodedMac(first) && !keys.has(macKey(first));
  return isFirstFree && last - first < ADDRESSES ? free - 1 : free;
}

/** MAC addresses of groups: 23 bits of them count (RFC 1112 §6.4). */
const ADDRESSES = 2 ** 23;

/** The group of each stream that has one, and the MAC addresses that they map to. */
const groupsInUse = perObject((streams: Site['streams']) => {
  const groups = streams.flatMap(({ group }) => (group !== undefined && isMulticast(group) ? [group] : []));
  return { groups, keys: new Set(groups.map(macKey)) };
});

function scopeNear(groups: readonly number[], near: number | undefined): GroupBlock {
  if (near !== undefined && isMulticast(near) && isScope(blockOf(near))) return blockOf(near);
  const uses = new Map<GroupBlock, number>();
  for (const group of groups) {
    const block = blockOf(group);
    if (isScope(block)) uses.set(block, (uses.get(block) ?? 0) + 1);
  }
  // A site with all groups in one unassigned block has chosen it.
  const block = near === undefined ? onlyBlock(groups) : undefined;
  if (block?.use === 'unassigned-admin') return block;
  let best = blockOf(ORGANIZATION_LOCAL);
  for (const [block, count] of uses) if (count > (uses.get(best) ?? 0)) best = block;
  return best;
}

function onlyBlock([first, ...others]: readonly number[]): GroupBlock | undefined {
  const block = first === undefined ? undefined : blockOf(first);
  return others.every((group) => blockOf(group) === block) ? block : undefined;
}

/** The scopes that RFC 2365 names for use within a site or an organization. */
function isScope({ use }: GroupBlock): boolean {
  return use === 'organization-local' || use === 'local-scope';
}

/** Gives a stream the next free group. */
export function nextFreeGroupFix(site: Site, { item, group }: Stream): Fix[] {
  const free = nextFreeGroup(site, group);
  if (free === undefined) return [];
  const text = formatAddress(free);
  return fixOf(`Use ${text}, the next free group`, setValue(item, ['group'], text));
}
