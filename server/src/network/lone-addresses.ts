/**
 * Addresses in another network than all others around them, where no VLAN declares the subnet.
 *
 * Without a subnet the length of the prefix is a guess. In 192.168.0.0/16, which RFC 1918 §3 gives as 256 class C
 * networks, it is usually /24; other private blocks are divided in too many ways to guess.
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
  /** The network of all others around it. */
  readonly around: Subnet;
  /** Another part of the wiring whose hosts are in the network of the address. */
  readonly elsewhere: BroadcastDomain | undefined;
}

const CLASS_C_NETWORKS: Subnet = { network: 0xc0a8_0000, prefix: 16 };
const PREFIX = 24;

/** How many devices must be in one network for another one to be the odd one out. */
const AGREEING = 2;

/** The lone addresses in the order of the cables. */
export function loneAddresses(devices: readonly Device[], { topology, interfaces }: Network): LoneAddress[] {
  const bare = new Set(topology.domains.filter(({ vlan }) => vlan?.subnet === undefined));
  if (bare.size === 0) return [];
  const inBare = devices.flatMap((device) => interfaces.of(device).filter(({ domain }) => bare.has(domain)));
  const parts = [...grouped(inBare, ({ domain }) => domain)].map(([domain, around]) => ({
    domain,
    ...apartIn(around),
  }));
  const found = parts.flatMap(({ domain, around, lone }) => {
    if (around === undefined || lone?.address === undefined) return [];
    const { address } = lone;
    const elsewhere = parts.find((other) => other.domain !== domain && isIn(other.around, address))?.domain;
    return [{ own: lone, address, around, elsewhere }];
  });
  const order = new Map(found.length < 2 ? [] : topology.links.map((link, index) => [link, index]));
  return found.sort((a, b) => (order.get(a.own.link) ?? 0) - (order.get(b.own.link) ?? 0));
}

/** The network of most devices, and the only interface in another. */
function apartIn(all: readonly Interface[]): { readonly around?: Subnet; readonly lone?: Interface | undefined } {
  const addressed = all.filter(({ address }) => address !== undefined);
  if (!addressed.every(({ address }) => isIn(CLASS_C_NETWORKS, address ?? 0))) return {};
  const networks = [...grouped(addressed, ({ address = 0 }) => formatAddress(networkOf(address))).values()]
    .map((members) => ({ members, count: new Set(members.map(({ device }) => device)).size }))
    .sort((a, b) => b.count - a.count);
  const [largest, second, third] = networks;
  const [first] = largest?.members ?? [];
  if (largest === undefined || first?.address === undefined || largest.count < AGREEING) return {};
  const around = { network: networkOf(first.address), prefix: PREFIX };
  const [lone] = second?.members ?? [];
  // A device that is in both is there on purpose.
  const isBoth = largest.members.some(({ device }) => device === lone?.device);
  return second?.count !== 1 || third !== undefined || isBoth ? { around } : { around, lone };
}

function isIn(subnet: Subnet | undefined, address: number): boolean {
  return subnet !== undefined && contains(subnet, address);
}

function networkOf(address: number): number {
  return address - (address % 2 ** (32 - PREFIX));
}
