/**
 * How many more cameras like one of the site a switch takes, what stops the next one, and what would stop them after
 * that. The site is planned and checked with so many more cameras, as if they were declared.
 */

import { perObject } from '../memo.ts';
import type { BroadcastDomain } from '../network/vlan-membership.ts';
import { type Plan, planner } from '../plan.ts';
import { countFreeAddresses } from '../site/free/address.ts';
import { countFreeGroups } from '../site/free/group.ts';
import { type Device, type Stream, isRtsp, ownAddresses } from '../site/model.ts';
import { formatAddress, isMulticast } from '../standards/ipv4.ts';
import { blockOf } from '../standards/multicast.ts';
import { Judge } from '../what-if/judge.ts';
import { Copies, spaceOf } from './copies.ts';
import { type Family, familyOf } from './family.ts';
import { type LimitFigure, figuresOf } from './figures.ts';
import { type FittingPorts, fittingPorts } from './fitting-ports.ts';
import { MOST_PLANNED, bearable, greatest } from './growth.ts';
import { asName } from '../text/words.ts';

export type LimitKind = LimitFigure['limit'] | 'ports' | 'addresses' | 'decoders';

export interface Limit {
  readonly limit: LimitKind;
  /** A switch, a volume, a VLAN, a screen, or a direction of a link: `core/16 → stable/9`. */
  readonly at: string;
  /** How many more cameras it allows by itself; `undefined` where the site declares too little. */
  readonly more: number | undefined;
  /** What stops one more. */
  readonly words: string;
  /** The sum behind the limit: its amount, what the first further camera adds, and its bound; in the figure's units. */
  readonly sum?: Sum;
}

export interface Sum extends Pick<LimitFigure, 'isAir' | 'most'> {
  readonly now: number;
  readonly each: number;
}

export interface Headroom {
  readonly camera: Device;
  readonly at: Device;
  /** The largest number of further cameras that brings no new error. */
  readonly more: number;
  /** What one more would break. */
  readonly stop: string;
  /** In the order in which they bind; unknown ones last. */
  readonly limits: readonly Limit[];
  /** Patch panels that its cable is led through. A further camera may do without, so that they are no limit. */
  readonly panels: readonly { readonly panel: string; readonly free: number }[];
}

/** The headroom for further cameras like `camera` at the switch `at`; kept as long as the plan. */
export function headroomOf(plan: Plan, camera: Device, at: Device): Headroom {
  const known = headroomsOf(plan);
  const own = known.get(camera) ?? new Map<Device, Headroom>();
  known.set(camera, own);
  let found = own.get(at);
  if (found === undefined) own.set(at, (found = compute(plan, camera, at)));
  return found;
}

const headroomsOf = perObject((_: Plan) => new Map<Device, Map<Device, Headroom>>());

function compute(plan: Plan, camera: Device, at: Device): Headroom {
  const family = familyOf(plan, camera);
  const ports = fittingPorts(plan, family, at);
  const copies = new Copies(plan, family, at, ports.fitting);
  const planOf = planner();
  const figures = new Map([[0, figuresOf(plan)]]);
  const figuresWith = (number: number): ReadonlyMap<string, LimitFigure> => {
    let found = figures.get(number);
    if (found === undefined) figures.set(number, (found = figuresOf(planOf(copies.withPorts(number)))));
    return found;
  };
  const constructive = [
    ...portLimit(ports, camera, at),
    ...addressLimits(plan, camera, family.domain),
    ...groupLimits(plan, family),
  ];
  const limits: Limit[] = [
    ...constructive,
    ...[...bearable(figuresWith)].map(([{ limit, at: where, words, amount, most, isAir }, { more, each }]): Limit => ({
      limit,
      at: where,
      more,
      words,
      sum: { now: amount, each, most, ...(isAir === true && { isAir }) },
    })),
    ...decoderLimits(plan, family),
  ];
  const inOrder = limits.sort((a, b) => (a.more ?? Infinity) - (b.more ?? Infinity));
  const room = Math.min(MOST_PLANNED, ...constructive.flatMap(({ more }) => more ?? []));
  const guess = Math.min(room, ...inOrder.flatMap(({ limit, more }) => (limit === 'decoders' ? [] : (more ?? []))));
  const judge = new Judge(plan);
  const errorsWith = perNumber((number) => judge.newErrors([...plan.site.items, ...copies.items(number)]));
  const more = greatest((number) => errorsWith(number).length === 0, room, guess);
  const binding = inOrder.find((limit) => limit.more === more && limit.limit !== 'decoders');
  const [error] = binding === undefined && more < room ? errorsWith(more + 1) : [];
  return {
    camera,
    at,
    more,
    stop: binding?.words ?? error?.message ?? 'more are not tried',
    limits: inOrder,
    panels: panelsOf(plan, family),
  };
}

function panelsOf({ site: { cables, deviceByName } }: Plan, { link }: Family): Headroom['panels'] {
  const names = new Set((link?.cable.through ?? []).map(({ device }) => device));
  return [...names].flatMap((panel) => {
    const { kind, ports = [] } = deviceByName.get(panel) ?? {};
    if (kind !== 'patch-panel' || ports.length === 0) return [];
    const taken = new Set(
      cables.flatMap(({ through }) => through.flatMap((end) => (end.device === panel ? (end.port ?? []) : []))),
    );
    return [{ panel, free: ports.filter(({ name }) => !taken.has(name)).length }];
  });
}

function perNumber<T>(compute: (number: number) => T): (number: number) => T {
  const known = new Map<number, T>();
  return (number) => {
    let found = known.get(number);
    if (found === undefined) known.set(number, (found = compute(number)));
    return found;
  };
}

function portLimit({ fitting, others }: FittingPorts, camera: Device, at: Device): Limit[] {
  const words = `${asName(at.name)} has no free port left for a camera like ${asName(camera.name)}`;
  return [
    {
      limit: 'ports',
      at: at.name,
      more: fitting.length,
      words: others === '' ? words : `${words}; free are ${others}`,
    },
  ];
}

/** The limit of each network that the camera has an address in. */
function addressLimits(plan: Plan, camera: Device, domain: BroadcastDomain | undefined): Limit[] {
  const addresses = new Map<ReturnType<typeof spaceOf>, number[]>();
  for (const { address } of ownAddresses(camera)) {
    const space = spaceOf(plan, address);
    addresses.set(space, [...(addresses.get(space) ?? []), address]);
  }
  const found = [...addresses].map(([space, own]): Limit => {
    const at = plan.site.vlans.find((vlan) => vlan === space)?.name ?? `the network of ${formatAddress(own[0] ?? 0)}`;
    const free = countFreeAddresses(plan.site, space);
    return { limit: 'addresses', at, more: Math.floor(free / own.length), words: `${at} has no free address left` };
  });
  if (found.length > 0) return found;
  return [{ limit: 'addresses', at: domain?.name ?? camera.name, more: undefined, words: 'no address is fixed' }];
}

function groupLimits({ site }: Plan, { streams }: Family): Limit[] {
  const own = new Set(streams.flatMap(({ group }) => (group !== undefined && isMulticast(group) ? [group] : [])));
  const [first] = own;
  if (first === undefined) return [];
  const block = blockOf(first);
  const at = `${formatAddress(block.first)} to ${formatAddress(block.last)}`;
  const more = Math.floor(countFreeGroups(site, first) / own.size);
  return [{ limit: 'groups', at, more, words: `no group is free in ${at}` }];
}

/** The limits of screens that show all that they receive at the same time. */
function decoderLimits({ site }: Plan, { streams }: Family): Limit[] {
  const isAskedFor = ({ group, transport }: Stream): boolean => group !== undefined || isRtsp(transport);
  const received = (device: Device, among: readonly Stream[]): number =>
    among.filter((stream) => isAskedFor(stream) && stream.receivers.includes(device.name)).length;
  return site.devices.flatMap((device): Limit[] => {
    const each = device.kind === 'display' ? received(device, streams) : 0;
    if (each === 0) return [];
    const { name, decoders } = device;
    const limit = { limit: 'decoders', at: name } as const;
    if (decoders === undefined)
      return [{ ...limit, more: undefined, words: `${asName(name)} does not say its decoders` }];
    const spare = decoders - received(device, site.streams);
    // A screen that chooses among its streams only has more to choose from.
    const more = spare < 0 ? undefined : Math.floor(spare / each);
    return [{ ...limit, more, words: `${asName(name)} shows ${decoders} at a time` }];
  });
}
