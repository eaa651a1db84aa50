/**
 * Link aggregation (IEEE 802.1AX): several cables between two groups of ports make one link, which spanning tree sees
 * as one. A cable that does not fit carries nothing: one of another speed than the first, and all but the first where
 * the two ends do not agree.
 */

import type { Port } from '../site/model.ts';
import { type PhysicalLink, type MemberLink, singleLink } from './link.ts';

/** The links in the order of their first cables. */
export function aggregatedLinks(cables: readonly MemberLink[]): PhysicalLink[] {
  const groups = new Map<MemberLink | string, MemberLink[]>();
  for (const member of cables) {
    const key = groupOf(member) ?? member;
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [member]);
    else group.push(member);
  }
  return [...groups.values()].flatMap((group) => {
    const [first, ...others] = group.length === 1 ? group : group.sort(byPort);
    if (first === undefined) return [];
    return others.length === 0 ? singleLink(first) : aggregate(first, [first, ...others]);
  });
}

const names = new Intl.Collator('en', { numeric: true });

/** Orders cables by their ports at one of the two devices, so that their order in a file does not matter. */
function byPort(first: MemberLink, second: MemberLink): number {
  const near = ({ a, b }: MemberLink): string => (a.device.name < b.device.name ? a : b).name;
  return names.compare(near(first), near(second));
}

/** A key that is the same for all cables between two groups, or between a group and a device without one. */
function groupOf({ a, b }: MemberLink): string | undefined {
  if (a.lag === undefined && b.lag === undefined) return undefined;
  if (a.device.kind === 'media-converter' || b.device.kind === 'media-converter') return undefined;
  const end = ({ device, lag }: Port): string => (lag === undefined ? device.name : `${device.name}/${lag}`);
  return [end(a), end(b)].sort().join(' ');
}

function aggregate(first: MemberLink, all: readonly MemberLink[]): PhysicalLink {
  const speed = all.find(({ capacity }) => capacity !== undefined)?.capacity;
  const fits = ({ capacity }: MemberLink): boolean => capacity === undefined || capacity === speed;
  const members = canAggregate(first) ? all.filter(fits) : [first];
  const capacity =
    speed === undefined ? undefined : members.reduce((sum, member) => sum + (member.capacity ?? speed), 0);
  const idle = all.filter((member) => !members.includes(member));
  return { members, idle, ...(members[0] ?? first), capacity };
}

/** Whether both ends aggregate, and at least one starts LACP or neither uses it. */
export function canAggregate({ a, b }: Pick<MemberLink, 'a' | 'b'>): boolean {
  if (a.lag === undefined || b.lag === undefined) return false;
  if (a.lacp === 'off' || b.lacp === 'off') return a.lacp === b.lacp;
  return a.lacp === 'active' || b.lacp === 'active';
}
