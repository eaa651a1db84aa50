/** The network of a site, computed: its wiring, whom each stream reaches, and what that puts on each link. */

import type { Device, Site, Stream } from '../site/model.ts';
import { type BridgeTree, bridgeTree } from './bridge-tree.ts';
import { Crossings, type DirectionLoad, IDLE, totalLoad } from './crossings.ts';
import type { Delivery } from './delivery.ts';
import { Interfaces } from './interfaces.ts';
import type { Link } from './link.ts';
import { Memberships, deliverMulticast, joiningInterface } from './multicast.ts';
import { type StreamRates, streamRates } from './rates.ts';
import { type Topology, topologyOf } from './topology.ts';
import { type Ground, deliverUnicast } from './unicast.ts';

export interface Network {
  readonly topology: Topology;
  readonly interfaces: Interfaces;
  readonly crossings: Crossings;
  readonly memberships: Memberships;
  /** By stream index. */
  readonly rates: readonly StreamRates[];
  readonly deliveries: readonly Delivery[];
  /** By direction: 2·link from `a` to `b`, 2·link + 1 back. */
  readonly loads: readonly DirectionLoad[];
  /** The bridges of a network; laid when first asked for. */
  tree(network: number): BridgeTree;
}

export function networkOf(site: Site): Network {
  const topology = topologyOf(site);
  const interfaces = new Interfaces(site, topology);
  const crossings = new Crossings(topology.links.length);
  const multicastRouters = site.devices.filter((device) => device.kind === 'router' && device.multicastRouting);
  const linksOf = linksByNetwork(topology);
  const trees: (BridgeTree | undefined)[] = [];
  const tree = (network: number): BridgeTree => {
    const known = trees[network];
    if (known !== undefined) return known;
    const routers = multicastRouters.filter((router) => interfaces.in(router, network) !== undefined);
    return (trees[network] = bridgeTree(site, network, linksOf[network] ?? [], routers));
  };
  const networkName = (network: number): string => topology.networks[network]?.name ?? 'no network';
  const ground: Ground = { site, interfaces, crossings, multicastRouters, tree, networkName };

  const memberships = new Memberships(ground);
  for (const stream of site.streams) joinAll(ground, memberships, stream);
  const rates = site.streams.map((stream) => streamRates(stream, site.media[stream.index] ?? { video: undefined, audio: undefined }));
  const deliveries = site.streams.map((stream) => deliver(ground, memberships, stream));
  const loads: DirectionLoad[] = [];
  for (let direction = 0; direction < 2 * topology.links.length; direction++) {
    const crossing = crossings.at(direction);
    loads.push(crossing.length === 0 ? IDLE : totalLoad(crossing, rates));
  }
  return { topology, interfaces, crossings, memberships, rates, deliveries, loads, tree };
}

function linksByNetwork(topology: Topology): Link[][] {
  const found: Link[][] = topology.networks.map(() => []);
  for (const link of topology.links) {
    found[link.untagged]?.push(link);
    for (const network of link.tagged) found[network]?.push(link);
  }
  return found;
}

/** Every receiver of a group reports its membership before anything is sent: a group may have several streams. */
function joinAll(ground: Ground, memberships: Memberships, stream: Stream): void {
  if (stream.group === undefined) return;
  const source = sourceOf(ground.site, stream);
  const network = source === undefined ? undefined : ground.interfaces.towards(source, stream.group)?.by.network;
  for (const name of stream.receivers) {
    const receiver = ground.site.deviceByName.get(name);
    const member = receiver === undefined ? undefined : joiningInterface(ground, receiver, stream.group, network);
    if (member !== undefined) memberships.join(stream.group, member);
  }
}

function sourceOf(site: Site, stream: Stream): Device | undefined {
  return stream.source === undefined ? undefined : site.deviceByName.get(stream.source);
}

function deliver(ground: Ground, memberships: Memberships, stream: Stream): Delivery {
  const source = sourceOf(ground.site, stream);
  if (source === undefined) return { stream, source, leaves: undefined, route: undefined, reaches: [], unreached: [], networks: [] };
  if (stream.group === undefined) return deliverUnicast(ground, stream, source);
  return deliverMulticast(ground, memberships, stream, source, stream.group);
}
