/** The bridges of one broadcast domain as a tree: how frames travel in it, and where snooping bridges know routers. */

import type { Device, Port } from '../site/model.ts';
import { type Direction, type Link, oppositePort, portOf } from './link.ts';
import type { BroadcastDomain } from './vlan-membership.ts';

/** A switch, access point or converter, as part of one broadcast domain. */
export interface Bridge {
  readonly device: Device;
  readonly parent: Bridge | undefined;
  /** The link to the parent. */
  readonly up: Link | undefined;
  readonly depth: number;
  /** Connected bridges share a number. */
  readonly component: number;
  /** Every link of the domain at this bridge that frames may take. */
  readonly links: readonly Link[];
  /**
   * Links whose far end does not accept the domain: spanning tree has it discard, it has other VLANs, or it is a host
   * without tagged VLANs. Flooded frames still leave by them, and end there.
   */
  readonly deadEnds: readonly Link[];
  /** Links that lead to the querier, or are declared router ports: reports and all groups go there. */
  readonly routerLinks: readonly Link[];
  /** Links that reports are sent out of as well. */
  readonly reportLinks: readonly Link[];
  /** Whether it sends a group only where somebody has joined; else it floods. */
  readonly snoops: boolean;
}

export interface BridgeTree {
  readonly domain: BroadcastDomain;
  readonly bridges: ReadonlyMap<Device, Bridge>;
  /** Links that close a loop which spanning tree leaves closed; the tree is grown without them. */
  readonly loops: readonly Link[];
  /** The elected querier: the named one, if it is among the elected. */
  readonly querier: Device | undefined;
  /** The elected querier by component. */
  readonly queried: ReadonlyMap<number, Device>;
}

/** A direction of a link whose other end does not accept what is sent. */
export type DeadEnd = Direction;

/** The input for the tree of a domain. */
export interface Branches {
  readonly domain: BroadcastDomain;
  /** The links that carry the domain. */
  readonly links: readonly Link[];
  /** Directions in which it is sent, but not accepted. */
  readonly deadEnds: readonly DeadEnd[];
  /** The device that the VLAN names as querier, whether in the domain or not. */
  readonly named: Device | undefined;
  /** The devices that may query, in the order in which they are elected. */
  readonly askers: readonly Device[];
}

/** The bridge of a port; `undefined` at a host, and at a routed port. */
export function bridgeOf<B extends Bridge>(
  { bridges }: { readonly bridges: ReadonlyMap<Device, B> },
  { device, forwards }: Port,
): B | undefined {
  return forwards ? bridges.get(device) : undefined;
}

/** The bridge that a frame reaches by a link; `undefined` where the far end is a host or does not accept it. */
export function bridgeBeyond(tree: BridgeTree, bridge: Bridge, link: Link): Bridge | undefined {
  if (bridge.deadEnds.includes(link)) return undefined;
  return bridgeOf(tree, oppositePort(link, portOf(link, bridge.device)));
}

/** A bridge while the tree grows. */
interface Growing extends Bridge {
  readonly parent: Growing | undefined;
  readonly links: Link[];
  readonly deadEnds: Link[];
  readonly routerLinks: Link[];
  readonly reportLinks: Link[];
  snoops: boolean;
}

/** Grows the tree from the querier's bridge, so that the path up is the path to the querier. */
export function bridgeTree({ domain, links, deadEnds, named, askers }: Branches): BridgeTree {
  const around = new Map<Device, Link[]>();
  const legs = new Map<Device, HostEnd[]>();
  for (const link of links) {
    if (link.blocked !== undefined) continue;
    for (const port of [link.a, link.b]) {
      if (port.forwards) append(around, port.device, link);
      else append(legs, port.device, { link, port });
    }
  }
  const asking = askers.filter((device) => around.has(device) || legs.has(device));

  const bridges = new Map<Device, Growing>();
  const loops = new Set<Link>();
  const queried = new Map<number, Device>();
  let component = 0;
  const grow = (device: Device): void => {
    if (!bridges.has(device)) growFrom(device, component++, around, { bridges, loops });
  };
  for (const device of asking) {
    const first = around.has(device) ? device : bridgeNextTo(legs.get(device) ?? []);
    if (first !== undefined) grow(first);
  }
  for (const device of around.keys()) grow(device);

  for (const { link, out } of deadEnds) bridges.get(out.device)?.deadEnds.push(link);

  for (const device of asking) markRouterLinks(device, legs.get(device) ?? [], bridges, queried);
  for (const bridge of bridges.values()) {
    if (queried.has(bridge.component) && bridge.up !== undefined) add(bridge.routerLinks, bridge.up);
    const { snooping, unasked } = bridge.device;
    bridge.snoops = snooping && (queried.has(bridge.component) || unasked !== 'flood');
    for (const link of [...bridge.links, ...bridge.deadEnds]) {
      const port = portOf(link, bridge.device);
      if (port.routerPort) add(bridge.routerLinks, link);
      if (port.forwardReports) add(bridge.reportLinks, link);
    }
  }
  const elected = [...queried.values()];
  const querier = elected.find((device) => device === named) ?? elected[0];
  return { domain, bridges, loops: [...loops], querier, queried };
}

function growFrom(
  root: Device,
  component: number,
  around: ReadonlyMap<Device, readonly Link[]>,
  { bridges, loops }: { readonly bridges: Map<Device, Growing>; readonly loops: Set<Link> },
): void {
  const reach = (device: Device, parent: Growing | undefined, up: Link | undefined): Growing => {
    const links = up === undefined ? [] : [up];
    const depth = parent === undefined ? 0 : parent.depth + 1;
    const lists = { links, deadEnds: [], routerLinks: [], reportLinks: [] };
    const bridge = { device, parent, up, depth, component, snoops: device.snooping, ...lists };
    bridges.set(device, bridge);
    return bridge;
  };
  const queue = [reach(root, undefined, undefined)];
  for (const bridge of queue) {
    for (const link of around.get(bridge.device) ?? []) {
      if (link === bridge.up || loops.has(link)) continue;
      const next = oppositePort(link, portOf(link, bridge.device));
      if (next.forwards && bridges.has(next.device)) {
        loops.add(link);
        continue;
      }
      bridge.links.push(link);
      if (next.forwards) queue.push(reach(next.device, bridge, link));
    }
  }
}

function bridgeNextTo(legs: readonly HostEnd[]): Device | undefined {
  return legs.map(({ link, port }) => oppositePort(link, port)).find(({ forwards }) => forwards)?.device;
}

/**
 * Makes the device the querier of its component, if it has none yet. Queries reach every bridge of the component, so
 * each learns the path to the querier. For most bridges that path leads up; those between the querier and the root
 * learn it downwards too.
 */
function markRouterLinks(
  device: Device,
  legs: readonly HostEnd[],
  bridges: ReadonlyMap<Device, Growing>,
  queried: Map<number, Device>,
): void {
  const beside = bridgeNextTo(legs);
  const first = bridges.get(device) ?? (beside === undefined ? undefined : bridges.get(beside));
  if (first === undefined || queried.has(first.component)) return;
  queried.set(first.component, device);
  for (const { link, port } of legs) {
    const bridge = bridgeOf({ bridges }, oppositePort(link, port));
    if (bridge !== undefined) add(bridge.routerLinks, link);
  }
  for (let bridge = first; bridge.parent !== undefined && bridge.up !== undefined; bridge = bridge.parent)
    add(bridge.parent.routerLinks, bridge.up);
}

function append<K, V>(lists: Map<K, V[]>, key: K, value: V): void {
  const list = lists.get(key);
  if (list === undefined) lists.set(key, [value]);
  else list.push(value);
}

function add(list: Link[], link: Link): void {
  if (!list.includes(link)) list.push(link);
}

/** The bridges from one to another, both included; `undefined` where nothing joins them. */
export function bridgesBetween(from: Bridge, to: Bridge): Bridge[] | undefined {
  if (from.component !== to.component) return undefined;
  const head: Bridge[] = [];
  const tail: Bridge[] = [];
  let a: Bridge | undefined = from;
  let b: Bridge | undefined = to;
  while (a !== undefined && b !== undefined && a !== b) {
    if (a.depth >= b.depth) {
      head.push(a);
      a = a.parent;
    } else {
      tail.push(b);
      b = b.parent;
    }
  }
  return a === undefined || a !== b ? undefined : [...head, a, ...tail.reverse()];
}

/** The link between a bridge and one that is its parent or child. */
export function linkBetween(a: Bridge, b: Bridge): Link | undefined {
  return a.parent === b ? a.up : b.parent === a ? b.up : undefined;
}

/** A host's end in a domain. */
interface HostEnd {
  readonly link: Link;
  readonly port: Port;
}

/** The hops from one host to another, in order; `undefined` where the domain does not join them. */
export function pathBetween(tree: BridgeTree, from: HostEnd, to: HostEnd): Direction[] | undefined {
  if (from.link.blocked !== undefined || to.link.blocked !== undefined) return undefined;
  if (from.link === to.link) return [{ link: from.link, out: from.port }];
  const into = oppositePort(to.link, to.port);
  let near = bridgeOf(tree, oppositePort(from.link, from.port));
  let far = bridgeOf(tree, into);
  const hops: Direction[] = [{ link: from.link, out: from.port }];
  const down: Direction[] = [];
  // Both ends go up the tree until they meet; the deeper one goes first.
  while (near !== far) {
    if (near === undefined || far === undefined) return undefined;
    if (near.depth >= far.depth) {
      if (near.up !== undefined) hops.push({ link: near.up, out: portOf(near.up, near.device) });
      near = near.parent;
    } else {
      if (far.up !== undefined && far.parent !== undefined)
        down.push({ link: far.up, out: portOf(far.up, far.parent.device) });
      far = far.parent;
    }
  }
  if (near === undefined) return undefined;
  for (let hop = down.pop(); hop !== undefined; hop = down.pop()) hops.push(hop);
  hops.push({ link: to.link, out: into });
  return hops;
}
