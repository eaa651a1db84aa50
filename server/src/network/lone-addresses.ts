/**
 * Addresses that are of another network than all others around them, where no VLAN says what the subnet is.
 *
 * Without a subnet nothing says how long the prefix is. In 192.168.0.0/16, which RFC 1918 §3 gives as 256 class C
 * networks, it is a /24 as a rule; other private blocks are divided in too many ways to tell.
 */

import { grouped } from '../grouped.ts';
import type { Device } from '../site/model.ts';
import { type Subnet, contains, formatAddress } from '../standards/ipv4.ts';
import type { Interface } from './interface.ts';
import type { Network } from './network.ts';
import type { BroadcastDomain } from './vlan-membership.ts';

export interface LoneAddress {
  readonly own: Interface;
  readonly address: number;
  /** What all others around it are in. */
  readonly around: Subnet;
  /** Another part of the wiring, whose hosts are in the network of the address. */
  readonly elsewhere: BroadcastDomain | undefined;
}

const CLASS_C_NETWORKS: Subnet = { network: 0xc0a8_0000, prefix: 16 };
const PREFIX = 24;

/** How many devices have to agree for another one to be the odd one out. */
const AGREEING = 2;

/** In the order of the cables. */
export function loneAddresses(devices: readonly Device[], { topology, interfaces }: Network): LoneAddress[] {
  const bare = new Set(topology.domains.filter(({ vlan }) => vlan?.subnet === undefined));
  if (bare.size === 0) return [];
  const own = devices.flatMap((device) => interfaces.of(device).filter(({ domain }) => bare.has(domain)));
  const parts = [...grouped(own, ({ domain }) => domain)].map(([domain, around]) => ({ domain, ...apartIn(around) }));
  const found = parts.flatMap(({ domain, around, lone }) => {
    if (around === undefined || lone?.address === undefined) return [];
    const { address } = lone;
    const elsewhere = parts.find((other) => other.domain !== domain && isIn(other.around, address))?.domain;
    return [{ own: lone, address, around, elsewhere }];
  });
  const order = new Map(found.length < 2 ? [] : topology.links.map((link, index) => [link, index]));
  return found.sort((a, b) => (order.get(a.own.link) ?? 0) - (order.get(b.own.link) ?? 0));
}

/** The network of most devices, and the one that is in another. */
function apartIn(all: readonly Interface[]): { readonly around?: Subnet; readonly lone?: Interface | undefined } {
  const known = all.filter(({ address }) => address !== undefined);
  if (!known.every(({ address }) => isIn(CLASS_C_NETWORKS, address ?? 0))) return {};
  const networks = [...grouped(known, ({ address = 0 }) => formatAddress(networkOf(address))).values()]
    .map((members) => ({ members, count: new Set(members.map(({ device }) => device)).size }))
    .sort((a, b) => b.count - a.count);
  const [most, other, third] = networks;
  const [first] = most?.members ?? [];
  if (most === undefined || first?.address === undefined || most.count < AGREEING) return {};
  const around = { network: networkOf(first.address), prefix: PREFIX };
  const [lone] = other?.members ?? [];
  // A device that is in both is there on purpose.
  const isBoth = most.members.some(({ device }) => device === lone?.device);
  return other?.count !== 1 || third !== undefined || isBoth ? { around } : { around, lone };
}

function isIn(subnet: Subnet | undefined, address: number): boolean {
  return subnet !== undefined && contains(subnet, address);
}

function networkOf(address: number): number {
  return address - (address % 2 ** (32 - PREFIX));
}
