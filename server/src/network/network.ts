/** The network of a site, computed: its wiring, whom each stream reaches, and what that puts on each link. */

import type { Cable, Device, Port, Site, Stream } from '../site/model.ts';
import { isLaidAlike } from '../site/same-wiring.ts';
import { type BridgeTree, type DeadEnd, bridgeTree } from './bridge-tree.ts';
import { type Crossing, Crossings, type CurrentRates, type DirectionLoad, totalLoad } from './crossings.ts';
import type { Delivery } from './delivery.ts';
import { Interfaces } from './interfaces.ts';
import { type Link, carries, outOf, sentBy } from './link.ts';
import { Memberships, deliverMulticast, joiningInterface } from './multicast.ts';
import { type StreamRates, streamRates } from './rates.ts';
import { type Topology, relabelled, topologyOf } from './topology.ts';
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
  /** What all streams put on a link in the direction in which frames leave by `out`. */
  load(link: Link, out: Port): DirectionLoad;
  /** The streams that cross a link in the direction in which frames leave by `out`. */
  copies(link: Link, out: Port): readonly Crossing[];
  ratesOf(stream: Stream): StreamRates;
  delivery(stream: Stream): Delivery;
}

/** What the cables and devices make, whatever is sent. */
interface Wiring {
  readonly site: Site;
  readonly topology: Topology;
  readonly interfaces: Interfaces;
  readonly routers: readonly Device[];
  readonly multicastRouters: readonly Device[];
  tree(network: number): BridgeTree;
}

/** Which links the streams take, whatever their rates. */
interface Ways {
  readonly streams: readonly Stream[];
  readonly wiring: Wiring;
  readonly crossings: Crossings;
  readonly memberships: Memberships;
  readonly deliveries: readonly Delivery[];
  readonly rates: CurrentRates;
}

/** The parts that a network was made of, to be used again where they still hold. */
const parts = new WeakMap<Network, Ways>();

/** `previous` is a network of the same site before an edit; what the edit did not touch is taken from it. */
export function networkOf(site: Site, previous?: Network): Network {
  const before = previous === undefined ? undefined : parts.get(previous);
  const wiring = (before === undefined ? undefined : keptWiring(before.wiring, site)) ?? layWiring(site);
  const isLaidAsBefore = before !== undefined && before.wiring.topology.links === wiring.topology.links;
  const ways = (isLaidAsBefore ? renewed(before, site, wiring) : undefined) ?? findWays(site, wiring);
  const { topology, interfaces, tree } = wiring;
  const { crossings, memberships, deliveries } = ways;
  const rates = site.streams.map((stream) =>
    streamRates(stream, site.media[stream.index] ?? { video: undefined, audio: undefined }),
  );
  if (previous !== undefined && ways === before && isSameList(previous.rates, rates)) return previous;
  const isAsBefore = previous !== undefined && ways.rates === before?.rates;
  const loads = isAsBefore ? changedLoads(previous, ways, rates) : allLoads(ways, rates);
  const network: Network = {
    topology,
    interfaces,
    crossings,
    memberships,
    rates,
    deliveries,
    loads,
    tree,
    load: (link, out) => at(loads, outOf(link, out)),
    copies: (link, out) => crossings.at(outOf(link, out)),
    ratesOf: (stream) => at(rates, stream.index),
    delivery: (stream) => at(deliveries, stream.index),
  };
  parts.set(network, ways);
  return network;
}

function at<T>(list: readonly T[], index: number): T {
  const found = list[index];
  if (found === undefined) throw new Error('a figure was asked for of something that is not of this site');
  return found;
}

function allLoads({ wiring, crossings, rates }: Ways, now: readonly StreamRates[]): DirectionLoad[] {
  rates.all = now;
  return Array.from({ length: 2 * wiring.topology.links.length }, (_, direction) =>
    totalLoad(crossings.at(direction), rates),
  );
}

/** The loads of before, but where a stream crosses whose rates are others now. */
function changedLoads(
  { rates: were, loads }: Network,
  { crossings, rates }: Ways,
  now: readonly StreamRates[],
): DirectionLoad[] {
  rates.all = now;
  const changed = new Set<number>();
  for (let index = 0; index < now.length; index++) if (now[index] !== were[index]) changed.add(index);
  const renewed = [...loads];
  for (const direction of crossings.crossedBy(changed)) renewed[direction] = totalLoad(crossings.at(direction), rates);
  return renewed;
}

function layWiring(site: Site): Wiring {
  const topology = topologyOf(site);
  const interfaces = new Interfaces(site, topology);
  const routers = inOrderOfChoice(site.devices.filter(({ kind }) => kind === 'router'));
  const multicastRouters = routers.filter(({ multicastRouting }) => multicastRouting);
  const linksOf = linksByNetwork(topology);
  const endsOf = deadEndsByNetwork(topology);
  const trees: (BridgeTree | undefined)[] = [];
  const tree = (network: number): BridgeTree => {
    const known = trees[network];
    if (known !== undefined) return known;
    const here = multicastRouters.filter((router) => interfaces.in(router, network) !== undefined);
    return (trees[network] = bridgeTree(site, network, linksOf[network] ?? [], endsOf[network] ?? [], here));
  };
  return { site, topology, interfaces, routers, multicastRouters, tree };
}

/**
 * Which of several routers on equal ways forwards: the one with the highest address, as where they find each other
 * sending the same multicast (the assert of RFC 7761 §4.6.1), then the first name. The order of a file decides nothing.
 */
function inOrderOfChoice(routers: readonly Device[]): Device[] {
  const highest = ({ ports }: Device): number =>
    Math.max(-1, ...ports.flatMap(({ addresses }) => addresses.map(({ address }) => address)));
  return [...routers].sort((a, b) => highest(b) - highest(a) || (a.name < b.name ? -1 : 1));
}

/** The wiring as it was, for a site where at most speeds, lengths and the like are others; else `undefined`. */
function keptWiring(before: Wiring, site: Site): Wiring | undefined {
  const was = before.site;
  if (was.vlans !== site.vlans) return undefined;
  if (was.devices === site.devices && was.cables === site.cables) return before;
  if (!isSameList(was.devices, site.devices) || !isLaidAs(was.cables, site.cables)) return undefined;
  // New objects, for whoever tells by them that something is another.
  return { ...before, site, topology: relabelled(before.topology, site.cables), interfaces: again(before.interfaces) };
}

function isLaidAs(before: readonly Cable[], cables: readonly Cable[]): boolean {
  if (before === cables) return true;
  return before.length === cables.length && before.every((cable, index) => isLaidAlike(cable, cables[index] ?? cable));
}

/** Another object of the same state. */
function again<T extends object>(object: T): T {
  return Object.assign(Object.create(Object.getPrototypeOf(object) as object) as T, object);
}

function isSameList<T>(a: readonly T[], b: readonly T[]): boolean {
  return a.length === b.length && a.every((element, index) => element === b[index]);
}

function findWays(site: Site, wiring: Wiring): Ways {
  const { topology, interfaces, routers, multicastRouters, tree } = wiring;
  const crossings = Crossings.over(topology.links);
  const networkName = (network: number): string => topology.networks[network]?.name ?? 'no network';
  const ground: Ground = { site, interfaces, crossings, routers, multicastRouters, tree, networkName };
  const memberships = new Memberships(ground);
  for (const stream of site.streams) joinAll(ground, memberships, stream);
  const deliveries = site.streams.map((stream) => deliver(ground, memberships, stream));
  return { streams: site.streams, wiring, crossings, memberships, deliveries, rates: { all: [] } };
}

/** The ways as they were, for streams that differ in what they carry alone; `undefined` where one goes elsewhere. */
function renewed(before: Ways, site: Site, wiring: Wiring): Ways | undefined {
  if (before.streams.length !== site.streams.length) return undefined;
  const go = site.streams.every((stream, index) => {
    const was = before.streams[index];
    return was !== undefined && (was === stream || goesAs(was, stream));
  });
  if (!go) return undefined;
  if (before.streams === site.streams && before.wiring === wiring) return before;
  const crossings = before.crossings.renewed(site.streams);
  const deliveries = before.deliveries.map((delivery, index) => {
    const stream = site.streams[index];
    return stream === undefined || delivery.stream === stream ? delivery : { ...delivery, stream };
  });
  const memberships = before.wiring === wiring ? before.memberships : again(before.memberships);
  return { ...before, streams: site.streams, wiring, crossings, memberships, deliveries };
}

function goesAs(a: Stream, b: Stream): boolean {
  return (
    a.name === b.name &&
    a.source === b.source &&
    a.group === b.group &&
    a.ttl === b.ttl &&
    (a.transport === 'rtsp') === (b.transport === 'rtsp') &&
    isSameList(a.receivers, b.receivers)
  );
}

function linksByNetwork(topology: Topology): Link[][] {
  const found: Link[][] = topology.networks.map(() => []);
  for (const link of topology.links) {
    found[link.untagged]?.push(link);
    for (const network of link.tagged) found[network]?.push(link);
  }
  return found;
}

/** By network, the ports that send it into a link whose other end does not take it. */
function deadEndsByNetwork(topology: Topology): DeadEnd[][] {
  const found: DeadEnd[][] = topology.networks.map(() => []);
  for (const link of topology.links) {
    for (const port of [link.a, link.b]) {
      if (!port.device.bridging || port === link.blocked) continue;
      const { untagged, tagged } = sentBy(link, port);
      for (const network of [untagged, ...tagged]) {
        if (link.blocked !== undefined || carries(link, network) === 'no') found[network]?.push({ link, port });
      }
    }
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
  if (source === undefined)
    return { stream, source, leaves: undefined, route: undefined, reaches: [], unreached: [], networks: [] };
  if (stream.group === undefined) return deliverUnicast(ground, stream, source);
  return deliverMulticast(ground, memberships, stream, source, stream.group);
}
