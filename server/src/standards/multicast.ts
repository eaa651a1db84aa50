/**
 * IPv4 multicast: the MAC address of a group, and what each block of groups is for.
 *
 * Sources, each read: RFC 1112 §6.4 (group to MAC), RFC 5771 §3–§10 (blocks), RFC 4607 §1, §4.3, §9 (source-specific),
 * RFC 6034 §3 (unicast-prefix-based), RFC 2365 §6, §9 (administrative scopes), RFC 2974 §3 (announcements),
 * RFC 4541 §2.1.2 (224.0.0.0/24 goes out of every port of a snooping switch).
 *
 * Every function takes a group, an address in 224.0.0.0/4, as an unsigned 32-bit number.
 */

import { formatAddress, isMulticast } from './ipv4.ts';

export type BlockUse =
  | 'local-control'
  | 'internetwork'
  | 'ad-hoc'
  | 'reserved'
  | 'sdp-sap'
  | 'ssm'
  | 'glop'
  | 'unicast-prefix'
  | 'admin-scoped'
  | 'organization-local'
  | 'local-scope'
  | 'unassigned-admin'
  | 'test-net';

/** A block of groups from `first` to `last`, what it is for, and what that means to somebody who picks a group. */
export interface GroupBlock {
  readonly first: number;
  readonly last: number;
  readonly name: string;
  readonly use: BlockUse;
  readonly advice: string;
  readonly source: string;
}

/** The MAC address that frames to the group carry, `01:00:5e:xx:xx:xx` (RFC 1112 §6.4). */
export function groupMac(group: number): string {
  const key = macKey(group);
  const low = [key >>> 16, (key >>> 8) & 0xff, key & 0xff].map((octet) => octet.toString(16).padStart(2, '0'));
  return `01:00:5e:${low.join(':')}`;
}

/** The 23 bits of the group that its MAC address keeps; groups with the same key share a MAC address. */
export function macKey(group: number): number {
  return group & 0x7fffff;
}

/** The 32 groups that share this one's MAC address, itself included, in ascending order. */
export function groupsOnMac(group: number): number[] {
  const key = macKey(group);
  return Array.from({ length: 32 }, (_, high) => ((0x1c0 + high) * 0x800000 + key) >>> 0);
}

/** Whether a snooping switch sends the group out of every port, joined or not (RFC 4541 §2.1.2(2)): 224.0.0.0/24. */
export function isLinkLocalGroup(group: number): boolean {
  return group >>> 8 === 0xe00000;
}

/**
 * Whether the group is outside 224.0.0.0/24 but shares a MAC address with a group inside, so that a switch which
 * forwards by MAC address floods it too (RFC 4607 §9, RFC 4541 §2.1.2(5)): x.0.0.y and x.128.0.y.
 */
export function onAlwaysFloodedMac(group: number): boolean {
  return macKey(group) <= 0xff && !isLinkLocalGroup(group);
}

/** Whether the group is one of the source-specific ones that are held for IANA: 232.0.0.0/24 (RFC 4607 §1). */
export function sourceSpecificHeld(group: number): boolean {
  return group >>> 8 === 0xe80000;
}

/** Whether the group is in the highest /24 of a named scope, kept for scope-relative assignments (RFC 2365 §9). */
export function scopeRelativeReserved(group: number): boolean {
  const use = blockOf(group).use;
  return (use === 'local-scope' || use === 'organization-local') && group >>> 8 === blockOf(group).last >>> 8;
}

/**
 * The group on which a session in this group is announced (RFC 2974 §3): the highest address of its administrative
 * scope, or 224.2.127.254 for a group of global scope. Undefined where no RFC sets the bounds of the scope: in
 * 224.0.0.0/24, and in 239.0.0.0/8 outside the named scopes.
 */
export function sapGroupFor(group: number): number | undefined {
  const block = blockOf(group);
  switch (block.use) {
    case 'local-scope':
    case 'organization-local':
      return block.last;
    case 'local-control':
    case 'admin-scoped':
    case 'unassigned-admin':
      return undefined;
    default:
      return 0xe0027ffe;
  }
}

/**
 * The block that the group belongs to; the blocks cover 224.0.0.0/4 without gap or overlap.
 * @throws RangeError if the address is not multicast
 */
export function blockOf(group: number): GroupBlock {
  const block = isMulticast(group) ? blocks.find(({ last }) => group <= last) : undefined;
  if (block === undefined) {
    throw new RangeError(`${formatAddress(group)} is not a multicast group`);
  }
  return block;
}

const useAdminScope = 'Take a group in 239.255.0.0/16 for one house, or in 239.192.0.0/14 for a whole organization.';
const reservedAdvice = `Reserved by IANA; applications must not use it. ${useAdminScope}`;
const adHocAdvice = `Assigned by IANA to single applications. ${useAdminScope}`;

/** Ascending; each block starts behind the one before, so only the last address is written. */
const ends: readonly (readonly [last: number, use: BlockUse, name: string, advice: string, source: string])[] = [
  [
    0xe00000ff,
    'local-control',
    'Local Network Control',
    `Never leaves its link, and every switch sends it out of every port. ${useAdminScope}`,
    'RFC 5771 §4',
  ],
  [
    0xe00001ff,
    'internetwork',
    'Internetwork Control',
    `Assigned by IANA to control protocols. ${useAdminScope}`,
    'RFC 5771 §5',
  ],
  [0xe000ffff, 'ad-hoc', 'AD-HOC Block I', adHocAdvice, 'RFC 5771 §3, §6'],
  [0xe001ffff, 'reserved', 'Reserved', reservedAdvice, 'RFC 5771 §3, §13'],
  [
    0xe002ffff,
    'sdp-sap',
    'SDP/SAP',
    `For sessions of global scope that are announced by SAP. ${useAdminScope}`,
    'RFC 5771 §7',
  ],
  [0xe004ffff, 'ad-hoc', 'AD-HOC Block II', adHocAdvice, 'RFC 5771 §3, §6'],
  [0xe7ffffff, 'reserved', 'Reserved', reservedAdvice, 'RFC 5771 §3, §13'],
  [
    0xe80000ff,
    'ssm',
    'Source-Specific Multicast, held for IANA',
    '232.0.0.0 must not be used and 232.0.0.1 to 232.0.0.255 are held for IANA; they also share MAC addresses with ' +
      '224.0.0.0/24. Take a group from 232.0.1.0 upwards.',
    'RFC 4607 §1, §4.3, §9',
  ],
  [
    0xe8ffffff,
    'ssm',
    'Source-Specific Multicast',
    'Receivers must name the source, so host, switch and router need IGMPv3.',
    'RFC 4607 §1',
  ],
  [
    0xe9fbffff,
    'glop',
    'GLOP',
    `Each /24 belongs to the holder of the autonomous system number in its middle octets. ${useAdminScope}`,
    'RFC 5771 §9, RFC 3180',
  ],
  [0xe9fc00ff, 'test-net', 'MCAST-TEST-NET', `For documentation and examples only. ${useAdminScope}`, 'RFC 5771 §9.2'],
  [0xe9ffffff, 'ad-hoc', 'AD-HOC Block III', adHocAdvice, 'RFC 5771 §9.1'],
  [
    0xeaffffff,
    'unicast-prefix',
    'Unicast-Prefix-Based',
    `Belongs to the holder of the public unicast prefix that it embeds. ${useAdminScope}`,
    'RFC 6034 §3',
  ],
  [0xeeffffff, 'reserved', 'Reserved', reservedAdvice, 'RFC 5771 §3, §13'],
  [
    0xefbfffff,
    'unassigned-admin',
    'Administratively Scoped, unassigned',
    `Kept for the organization-local scope to grow into. ${useAdminScope}`,
    'RFC 2365 §6.2.1',
  ],
  [
    0xefc3ffff,
    'organization-local',
    'Organization-Local Scope',
    'Free to use within an organization; its highest /24 is kept for scope-relative assignments.',
    'RFC 2365 §6.2',
  ],
  [
    0xeffcffff,
    'admin-scoped',
    'Administratively Scoped',
    `Administratively scoped, but no RFC names a scope here. ${useAdminScope}`,
    'RFC 2365 §5, RFC 5771 §10',
  ],
  [
    0xeffeffff,
    'unassigned-admin',
    'Local Scope expansion',
    'Kept for the local scope to grow into when 239.255.0.0/16 is used up. Take a group in 239.255.0.0/16.',
    'RFC 2365 §6.1',
  ],
  [
    0xefffffff,
    'local-scope',
    'IPv4 Local Scope',
    'Free to use within one site; its highest /24 is kept for scope-relative assignments.',
    'RFC 2365 §6.1',
  ],
];

/** The whole of 224.0.0.0/4, in ascending order. */
export const blocks: readonly GroupBlock[] = ends.map(([last, use, name, advice, source], index) => {
  const before = ends[index - 1];
  return { first: before === undefined ? 0xe0000000 : before[0] + 1, last, name, use, advice, source };
});
