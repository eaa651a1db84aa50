/** The bridges of one network as a tree: how frames travel in it, and where snooping bridges know routers. */

import type { Device, Port, Site } from '../site/model.ts';
import { type Link, far } from './link.ts';

/** A switch, access point or converter, as it stands in one network. */
export interface Bridge {
  readonly device: Device;
  readonly parent: Bridge | undefined;
  /** The link to the parent. */
  readonly up: Link | undefined;
  readonly depth: number;
  /** Bridges that hang together have one number. */
  readonly component: number;
  /** Every link of the network at this bridge that frames may take. */
  readonly links: Link[];
  /**
   * Links whose far end does not take the network: spanning tree has it discard, its VLANs are others, or it is a
   * host that has no tagged ones. What is flooded leaves by them all the same, and ends there.
   */
  readonly deadEnds: Link[];
  /** Links that lead to the querier, to a multicast router, or are set to: reports and all groups go there. */
  readonly routerLinks: Link[];
  /** Links that reports are sent out of as well. */
  readonly reportLinks: Link[];
}

export interface BridgeTree {
  readonly network: number;
  readonly bridges: ReadonlyMap<Device, Bridge>;
  /** Links that close a loop which no spanning tree cuts; the tree is laid without them. */
  readonly loops: readonly Link[];
  /** The device that asks for memberships, where one that stands in the network is named. */
  readonly querier: Device | undefined;
  /** By component: whether a querier or multicast router asks there. */
  readonly queried: ReadonlySet<number>;
}

/** A port that sends what the other end of its link does not take. */
export interface DeadEnd {
  readonly link: Link;
  readonly port: Port;
}

/** The bridge that a frame comes to by a link; `undefined` where that is a host or does not take it. */
export function bridgeBeyond(tree: BridgeTree, bridge: Bridge, link: Link): Bridge | undefined {
  return bridge.deadEnds.includes(link) ? undefined : tree.bridges.get(far(link, portOf(link, bridge.device)).device);
}

/** The port of a link that is at the bridge. */
export function portOf(link: Link, device: Device): Port {
  return link.a.device === device ? link.a : link.b;
}

/**
 * Lays the tree from the querier's bridge, so that the way up is the way to the querier.
 * `links` are those that carry the network, `deadEnds` those it is only sent into; `routers` the multicast routers with an interface in it.
 */
export function bridgeTree(
  site: Site,
  network: number,
  links: readonly Link[],
  deadEnds: readonly DeadEnd[],
  routers: readonly Device[],
): BridgeTree {
  const around = new Map<Device, Link[]>();
  for (const link of links) {
    if (link.blocked !== undefined) continue;
    for (const { device } of [link.a, link.b]) {
      const list = around.get(device);
      if (list === undefined) around.set(device, [link]);
      else list.push(link);
    }
  }
  const vlan = site.vlans[network];
  const named = vlan?.querier === undefined ? undefined : site.deviceByName.get(vlan.querier);
  const querier = named !== undefined && around.has(named) ? named : undefined;
  const asking = querier === undefined || routers.includes(querier) ? routers : [querier, ...routers];

  const bridges = new Map<Device, Bridge>();
  const loops: Link[] = [];
  const queried = new Set<number>();
  let component = 0;
  const grow = (device: Device): void => {
    if (bridges.has(device)) return;
    layFrom(device, component++, around, bridges, loops);
  };
  for (const device of asking) {
    const foot = device.bridging ? device : bridgeNextTo(device, around);
    if (foot !== undefined) grow(foot);
  }
  for (const device of around.keys()) if (device.bridging) grow(device);

  for (const { link, port } of deadEnds) bridges.get(port.device)?.deadEnds.push(link);

  for (const device of asking) markRouterLinks(device, around, bridges, queried);
  for (const bridge of bridges.values()) {
    if (queried.has(bridge.component) && bridge.up !== undefined) add(bridge.routerLinks, bridge.up);
    for (const link of [...bridge.links, ...bridge.deadEnds]) {
      const port = portOf(link, bridge.device);
      if (port.routerPort) add(bridge.routerLinks, link);
      if (port.forwardReports) add(bridge.reportLinks, link);
    }
  }
  return { network, bridges, loops, querier, queried };
}

function layFrom(
  root: Device,
  component: number,
  around: ReadonlyMap<Device, readonly Link[]>,
  bridges: Map<Device, Bridge>,
  loops: Link[],
): void {
  const first: Bridge = {
    device: root,
    parent: undefined,
    up: undefined,
    depth: 0,
    component,
    links: [],
    deadEnds: [],
    routerLinks: [],
    reportLinks: [],
  };
  bridges.set(root, first);
  const queue = [first];
  for (let at = 0; at < queue.length; at++) {
    const bridge = queue[at];
    if (bridge === undefined) continue;
    for (const link of around.get(bridge.device) ?? []) {
      if (link === bridge.up || loops.includes(link)) continue;
      const next = far(link, portOf(link, bridge.device)).device;
      if (!next.bridging) {
        bridge.links.push(link);
      } else if (bridges.has(next)) {
        loops.push(link);
      } else {
        bridge.links.push(link);
        const child: Bridge = {
          device: next,
          parent: bridge,
          up: link,
          depth: bridge.depth + 1,
          component,
          links: [link],
          deadEnds: [],
          routerLinks: [],
          reportLinks: [],
        };
        bridges.set(next, child);
        queue.push(child);
      }
    }
  }
}

function bridgeNextTo(device: Device, around: ReadonlyMap<Device, readonly Link[]>): Device | undefined {
  for (const link of around.get(device) ?? []) {
    const next = far(link, portOf(link, device)).device;
    if (next.bridging) return next;
  }
  return undefined;
}

/**
 * Queries reach every bridge of the component, so each learns the way to whoever asks. For all but the bridges
 * between it and the root that way is up; those know it downwards too.
 */
function markRouterLinks(
  device: Device,
  around: ReadonlyMap<Device, readonly Link[]>,
  bridges: ReadonlyMap<Device, Bridge>,
  queried: Set<number>,
): void {
  let foot: Bridge | undefined;
  if (device.bridging) {
    foot = bridges.get(device);
  } else {
    for (const link of around.get(device) ?? []) {
      const bridge = bridges.get(far(link, portOf(link, device)).device);
      if (bridge === undefined) continue;
      add(bridge.routerLinks, link);
      foot ??= bridge;
    }
  }
  if (foot === undefined) return;
  queried.add(foot.component);
  for (let bridge = foot; bridge.parent !== undefined && bridge.up !== undefined; bridge = bridge.parent)
    add(bridge.parent.routerLinks, bridge.up);
}

function add(list: Link[], link: Link): void {
  if (!list.includes(link)) list.push(link);
}

/** The links between two hosts' links, both included, in order; `undefined` where the network does not join them. */
export function wayBetween(
  tree: BridgeTree,
  from: { link: Link; port: Port },
  to: { link: Link; port: Port },
): { link: Link; out: Port }[] | undefined {
  if (from.link.blocked !== undefined || to.link.blocked !== undefined) return undefined;
  if (from.link === to.link) return [{ link: from.link, out: from.port }];
  const first = tree.bridges.get(far(from.link, from.port).device);
  const last = tree.bridges.get(far(to.link, to.port).device);
  const bridges = first === undefined || last === undefined ? undefined : bridgesBetween(first, last);
  if (bridges === undefined) return undefined;
  const way = [{ link: from.link, out: from.port }];
  bridges.forEach((bridge, index) => {
    const next = bridges[index + 1];
    const link = next === undefined ? to.link : linkBetween(bridge, next);
    if (link !== undefined)
      way.push({ link, out: next === undefined ? far(link, to.port) : portOf(link, bridge.device) });
  });
  return way;
}

/** The bridges from one to another, both included; `undefined` where nothing joins them. */
export function bridgesBetween(from: Bridge, to: Bridge): readonly Bridge[] | undefined {
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
  return a === undefined ? undefined : [...head, a, ...tail.reverse()];
}

/** The link between a bridge and its parent or child. */
export function linkBetween(a: Bridge, b: Bridge): Link | undefined {
  return b.parent === a ? b.up : a.up;
}
