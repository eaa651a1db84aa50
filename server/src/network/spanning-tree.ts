/**
 * Rapid spanning tree, one instance for all VLANs: which links it leaves idle (IEEE 802.1D-2004 clause 17).
 * The root is the bridge with the lowest priority, then with the lowest MAC address, or with the first name where the
 * site does not declare the addresses. A loop with a switch that does not take part stays closed: a rule reports it.
 */

import { pathCost } from '../standards/spanning-tree.ts';
import type { Device, Port } from '../site/model.ts';
import { type PhysicalLink, oppositePort, portOf } from './link.ts';

export interface SpanningTree<J extends PhysicalLink> {
  /** One for each group of connected bridges. */
  readonly roots: readonly Device[];
  /** The links that it leaves idle, with the end that discards. */
  readonly blocked: ReadonlyMap<J, Port>;
}

/** Two bridges that hear each other, at once or through media converters. */
interface Adjacency<J extends PhysicalLink> {
  readonly ports: readonly [Port, Port];
  /** The link at each of the ports. */
  readonly links: readonly [J, J];
}

/** The speed where neither end declares one, bit/s. */
const USUAL_SPEED = 1_000_000_000;

export function spanningTreeOf<J extends PhysicalLink>(
  devices: readonly Device[],
  links: readonly J[],
): SpanningTree<J> {
  const bridges = devices.filter((device) => device.bridging && device.spanningTree);
  if (bridges.length === 0) return { roots: [], blocked: new Map() };
  bridges.sort(byIdentifier(bridges));
  const rank = new Map(bridges.map((device, index) => [device, index]));
  const adjacent = adjacencies(links, rank);
  const around = new Map<Device, Adjacency<J>[]>();
  for (const adjacency of adjacent) {
    for (const { device } of adjacency.ports) {
      const list = around.get(device);
      if (list === undefined) around.set(device, [adjacency]);
      else list.push(adjacency);
    }
  }

  const cost = new Map<Device, number>();
  const roots: Device[] = [];
  for (const bridge of bridges) {
    if (cost.has(bridge) || !around.has(bridge)) continue;
    roots.push(bridge);
    spread(bridge, around, cost);
  }
  const before = (a: Port, b: Port): boolean => {
    const byCost = (cost.get(a.device) ?? 0) - (cost.get(b.device) ?? 0);
    const byBridge = (rank.get(a.device) ?? 0) - (rank.get(b.device) ?? 0);
    return (byCost || byBridge || byNumber(a, b)) < 0;
  };
  /** A bridge's path to the root: least cost, then the first neighbour by rank, then its lower port, then its own. */
  const rootPort = new Map<Device, Adjacency<J>>();
  for (const bridge of bridges) {
    if (roots.includes(bridge)) continue;
    let best: Path<J> | undefined;
    for (const adjacency of around.get(bridge) ?? []) {
      const [own, other] = ends(adjacency, bridge);
      const total = (cost.get(other.device) ?? 0) + costAt(adjacency, own);
      const path: Path<J> = { adjacency, own, other, cost: total, rank: rank.get(other.device) ?? 0 };
      if (own.device !== other.device && (best === undefined || isBetter(path, best))) best = path;
    }
    if (best !== undefined) rootPort.set(bridge, best.adjacency);
  }
  const blocked = new Map<J, Port>();
  for (const adjacency of adjacent) {
    const [a, b] = adjacency.ports;
    const later = before(a, b) ? 1 : 0;
    const port = adjacency.ports[later];
    if (rootPort.get(port.device) === adjacency) continue;
    blocked.set(adjacency.links[later], port);
  }
  return { roots, blocked };
}

/**
 * Orders bridges by their identifiers: the priority, then the MAC address (IEEE 802.1D-2004 §9.2.5). Where the site
 * does not declare every address, names decide, so that the order in a file does not matter.
 */
function byIdentifier(bridges: readonly Device[]): (a: Device, b: Device) => number {
  const isKnown = bridges.every(({ mac }) => mac !== undefined);
  const last = ({ mac = '', name }: Device): string => (isKnown ? mac : name);
  return (a, b) => a.spanningTreePriority - b.spanningTreePriority || (last(a) < last(b) ? -1 : 1);
}

function ends<J extends PhysicalLink>({ ports: [a, b] }: Adjacency<J>, bridge: Device): [Port, Port] {
  return a.device === bridge ? [a, b] : [b, a];
}

/** A bridge knows only the speed of its own port, which sets the path cost. */
function costAt<J extends PhysicalLink>({ ports: [a], links: [first, last] }: Adjacency<J>, port: Port): number {
  return pathCost((port === a ? first : last).capacity ?? USUAL_SPEED);
}

/** A path to the root through a neighbour. */
interface Path<J extends PhysicalLink> {
  readonly adjacency: Adjacency<J>;
  readonly own: Port;
  readonly other: Port;
  readonly cost: number;
  readonly rank: number;
}

function isBetter<J extends PhysicalLink>(a: Path<J>, b: Path<J>): boolean {
  return (a.cost - b.cost || a.rank - b.rank || byNumber(a.other, b.other) || byNumber(a.own, b.own)) < 0;
}

const names = new Intl.Collator('en', { numeric: true });

/** Orders ports by the numbers in their names, whatever their order in the file. */
function byNumber(a: Port, b: Port): number {
  return names.compare(a.name, b.name);
}

/** Least cost from the root to each bridge that it reaches. */
function spread<J extends PhysicalLink>(
  root: Device,
  around: ReadonlyMap<Device, readonly Adjacency<J>[]>,
  cost: Map<Device, number>,
): void {
  cost.set(root, 0);
  const queue: Device[] = [root];
  for (let at = 0; at < queue.length; at++) {
    const bridge = queue[at];
    if (bridge === undefined) continue;
    for (const adjacency of around.get(bridge) ?? []) {
      const [, other] = ends(adjacency, bridge);
      const total = (cost.get(bridge) ?? 0) + costAt(adjacency, other);
      const known = cost.get(other.device);
      if (known !== undefined && known <= total) continue;
      cost.set(other.device, total);
      queue.push(other.device);
    }
  }
}

function adjacencies<J extends PhysicalLink>(links: readonly J[], rank: ReadonlyMap<Device, number>): Adjacency<J>[] {
  const through = new Map<Device, J[]>();
  for (const link of links) {
    for (const { device } of [link.a, link.b]) {
      if (device.kind !== 'media-converter') continue;
      const list = through.get(device);
      if (list === undefined) through.set(device, [link]);
      else list.push(link);
    }
  }
  const met = new Set<Port>();
  const found: Adjacency<J>[] = [];
  for (const link of links) {
    for (const port of [link.a, link.b]) {
      if (!rank.has(port.device) || !port.forwards) continue;
      const [last, end] = follow(link, port, through);
      // Each pair is found from both of its ends; it counts once.
      if (!rank.has(end.device) || !end.forwards || end === port || met.has(end)) continue;
      met.add(port);
      found.push({ ports: [port, end], links: [link, last] });
    }
  }
  return found;
}

/** The far end of a link, followed through media converters with two cables. */
function follow<J extends PhysicalLink>(first: J, from: Port, through: ReadonlyMap<Device, readonly J[]>): [J, Port] {
  let link = first;
  let end = oppositePort(link, from);
  for (let steps = 0; steps < through.size; steps++) {
    const both = through.get(end.device);
    if (both?.length !== 2) break;
    const next = both[0] === link ? both[1] : both[0];
    if (next === undefined) break;
    end = oppositePort(next, portOf(next, end.device));
    link = next;
  }
  return [link, end];
}
