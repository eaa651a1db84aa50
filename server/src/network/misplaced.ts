/**
 * Addresses in the wrong network, by what went wrong: the subnet, two cables, the port of one cable, or one address.
 */

import { grouped } from '../grouped.ts';
import { type Subnet, contains, overlaps } from '../standards/ipv4.ts';
import type { Port, Vlan } from '../site/model.ts';
import { type AddressUse, isOutside } from './address-uses.ts';
import { type Link, oppositePort } from './link.ts';
import type { Network } from './network.ts';
import { isTransparent } from './transparent-segments.ts';
import { hasVlans } from './vlan-membership.ts';

/** A switch port that puts the hosts behind it into a VLAN, and their addresses. */
export interface PortPlacement {
  readonly port: Port;
  readonly link: Link;
  readonly vlan: Vlan;
  readonly uses: readonly AddressUse[];
}

export interface Misplaced {
  /** VLANs whose declared subnet is not the one that their hosts are in. */
  readonly subnets: readonly { readonly vlan: Vlan; readonly meant: Subnet; readonly uses: readonly AddressUse[] }[];
  /** Pairs of cables, each in the other's port. */
  readonly swapped: readonly (readonly [PortPlacement, PortPlacement])[];
  /** Cables with addresses of one other VLAN only: the port is in the wrong VLAN, or the cable in the wrong port. */
  readonly cables: readonly { readonly placed: PortPlacement; readonly meant: Vlan }[];
  /** All other addresses, each by itself. */
  readonly addresses: readonly AddressUse[];
}

type Wired = Pick<Network, 'topology' | 'addressUses'>;

export function misplacedIn(vlans: readonly Vlan[], network: Wired): Misplaced {
  const outside = network.addressUses.filter((use) =>
    isOutside(use, use.port === undefined && use.vlans.length === 0 ? vlans : use.vlans),
  );
  if (outside.length === 0 && vlans.length !== 1) return NOTHING;
  const explained = new Set<AddressUse>();
  const explain = (uses: readonly AddressUse[]): void => uses.forEach((use) => explained.add(use));
  const isExplained = ({ uses }: PortPlacement): boolean => uses.some((use) => explained.has(use));

  const subnets = vlans.flatMap((vlan) => {
    const found = wrongSubnet(vlan, vlans, network);
    return found === undefined ? [] : [{ vlan, ...found }];
  });
  for (const { uses } of subnets) explain(uses);

  const placed = placedWrong(
    outside.filter((use) => !explained.has(use)),
    network,
  );
  const swapped: (readonly [PortPlacement, PortPlacement])[] = [];
  for (const [index, first] of placed.entries()) {
    const second = placed
      .slice(index + 1)
      .find((later) => !isExplained(later) && belongs(first, later.vlan) && belongs(later, first.vlan));
    if (second === undefined || isExplained(first)) continue;
    swapped.push([first, second]);
    explain([...first.uses, ...second.uses]);
  }

  const cables = placed.flatMap((at) => {
    if (isExplained(at)) return [];
    const meant = vlans.find((vlan) => belongs(at, vlan));
    return meant === undefined ? [] : [{ placed: at, meant }];
  });
  for (const cable of cables) explain(cable.placed.uses);

  return { subnets, swapped, cables, addresses: outside.filter((use) => !explained.has(use)) };
}

const NOTHING: Misplaced = { subnets: [], swapped: [], cables: [], addresses: [] };

function belongs({ uses }: PortPlacement, { subnet }: Vlan): boolean {
  return subnet !== undefined && uses.every(({ address }) => contains(subnet, address));
}

/** Ports with only addresses of other networks behind them. */
function placedWrong(outside: readonly AddressUse[], { topology, addressUses }: Wired): PortPlacement[] {
  const deciding = (use: AddressUse): { port: Port; link: Link } | undefined => {
    const isDeclared = use.port?.forwards === true || use.keyPath.includes('addresses');
    const link = use.port === undefined || isDeclared ? undefined : topology.linkAt(use.port);
    if (link === undefined || use.port === undefined) return undefined;
    const port = oppositePort(link, use.port);
    if (!isTransparent(port)) return { port, link };
    const { edges = [], hosts = [] } = topology.segments.get(port.device) ?? {};
    const [edge, second] = [...edges, ...hosts.filter(({ port: host }) => host.device.routing && hasVlans(host))];
    // A router's own address is not behind its port.
    return second === undefined && edge?.port !== use.port ? edge : undefined;
  };
  const uses = new Set(outside);
  const byPort = grouped(
    addressUses.filter((use) => uses.has(use) || (use.port !== undefined && use.home !== undefined)),
    (use) => deciding(use)?.port,
  );
  const order = new Map(topology.links.map((link, index) => [link, index]));
  const found = [...byPort].flatMap(([port, behind]) => {
    const link = topology.linkAt(port);
    const [vlan, second] = behind[0]?.vlans ?? [];
    if (link === undefined || vlan === undefined || second !== undefined) return [];
    return behind.every((use) => uses.has(use)) ? [{ port, link, vlan, uses: behind }] : [];
  });
  return found.sort((a, b) => (order.get(a.link) ?? 0) - (order.get(b.link) ?? 0));
}

/**
 * The subnet that at least two devices of a VLAN are in, where it is not the declared one: one of the same size that
 * all of them are in, or a wider one that holds the declared one too.
 */
function wrongSubnet(
  vlan: Vlan,
  vlans: readonly Vlan[],
  { addressUses }: Wired,
): { readonly meant: Subnet; readonly uses: readonly AddressUse[] } | undefined {
  const { subnet } = vlan;
  if (subnet === undefined) return undefined;
  const inVlan = addressUses.filter(({ vlans: among }) =>
    among.length === 0 ? vlans.length === 1 : among.length === 1 && among.includes(vlan),
  );
  const uses = inVlan.filter(({ address }) => !contains(subnet, address));
  const [first] = uses;
  if (first === undefined || new Set(uses.map(({ device }) => device)).size < 2) return undefined;
  const isElsewhere = ({ address }: AddressUse): boolean =>
    vlans.some((other) => other !== vlan && other.subnet !== undefined && contains(other.subnet, address));
  if (uses.some(isElsewhere)) return undefined;
  const all = subnetOf(first.address, SMALL);
  if (subnet.prefix > SMALL && contains(all, subnet.network) && inVlan.every(({ address }) => contains(all, address)))
    return { meant: narrowest(subnet, inVlan), uses };
  // Hosts on wiring without VLANs may be meant for another network.
  const areDeclared = inVlan.every(({ port, vlans: among }) => port === undefined || among.length > 0);
  const wider = areDeclared ? widened(subnet, inVlan, vlans) : undefined;
  if (wider !== undefined && uses.length < inVlan.length && uses.length * 2 >= inVlan.length)
    return { meant: wider, uses };
  const meant = subnetOf(first.address, subnet.prefix);
  if (!uses.every(({ address }) => contains(meant, address))) return undefined;
  const both = subnetOf(first.address, subnet.prefix - 1);
  if (uses.length < inVlan.length && !contains(both, subnet.network)) return undefined;
  // A switch does not declare in which VLAN it is managed.
  const managed = addressUses.filter((use) => use.port === undefined && contains(meant, use.address));
  return { meant: uses.length === inVlan.length ? meant : both, uses: [...new Set([...uses, ...managed])] };
}

/** The usual prefix in a house: hosts inside a /24 but outside a narrower declared subnet mean a wrong prefix. */
const SMALL = 24;

/** The shortest prefix that may have been meant by one that is too long. */
const WIDE = 16;

/** The subnet with a shorter prefix that holds all addresses, and nothing of another VLAN. */
function widened(subnet: Subnet, uses: readonly AddressUse[], vlans: readonly Vlan[]): Subnet | undefined {
  if (subnet.prefix <= WIDE) return undefined;
  const all = subnetOf(subnet.network, WIDE);
  if (!uses.every(({ address }) => contains(all, address))) return undefined;
  const wider = narrowest(subnet, uses);
  const isShared = vlans.some(
    (other) => other.subnet !== undefined && other.subnet !== subnet && overlaps(other.subnet, wider),
  );
  return isShared ? undefined : wider;
}

/** The narrowest subnet that holds another one and all addresses. */
function narrowest(subnet: Subnet, uses: readonly AddressUse[]): Subnet {
  let wider = subnet;
  while (!uses.every(({ address }) => contains(wider, address))) wider = subnetOf(wider.network, wider.prefix - 1);
  return wider;
}

function subnetOf(address: number, prefix: number): Subnet {
  const size = 2 ** (32 - prefix);
  return { network: Math.floor(address / size) * size, prefix };
}
