/**
 * Multicast: who has joined what, what each bridge knows of it, and which links a group takes.
 *
 * As RFC 4541 §2.1 has it and a snooping switch was measured to do:
 * - reports travel only towards router ports, so a bridge knows a group at the ports that reports came in by;
 * - what is flooded leaves towards a port that does not take it too, as spanning tree has it discard or its VLANs are
 *   others, and ends there: the bridge at the near end does not know of it;
 * - a known group goes to those ports and to router ports; an unknown one to router ports, or everywhere where it is
 *   not dropped; 224.0.0.0/24 everywhere always; without snooping everything goes everywhere.
 */

import { isLinkLocalGroup } from '../standards/multicast.ts';
import type { Device, Port, Stream } from '../site/model.ts';
import {
  type Bridge,
  type BridgeTree,
  bridgeBeyond,
  bridgesBetween,
  linkBetween,
  portOf,
  wayBetween,
} from './bridge-tree.ts';
import type { Delivery, Obstacle, Unreached } from './delivery.ts';
import type { Interface } from './interfaces.ts';
import { type Link, far } from './link.ts';
import type { Ground } from './unicast.ts';

/** What the bridges of one network know of one group: the links behind which somebody has joined. */
type Known = Map<Bridge, Set<Link>>;

export class Memberships {
  private readonly ground: Ground;
  /** By group, then by network. */
  private readonly joined = new Map<number, Map<number, { known: Known; members: Interface[] }>>();

  constructor(ground: Ground) {
    this.ground = ground;
  }

  /** A host sends a report for a group out of one of its interfaces. */
  join(group: number, member: Interface): void {
    let byNetwork = this.joined.get(group);
    if (byNetwork === undefined) this.joined.set(group, (byNetwork = new Map()));
    let state = byNetwork.get(member.network);
    if (state === undefined) byNetwork.set(member.network, (state = { known: new Map(), members: [] }));
    if (state.members.some(({ port }) => port === member.port)) return;
    state.members.push(member);
    const tree = this.ground.tree(member.network);
    const bridge =
      member.link.blocked === undefined ? tree.bridges.get(far(member.link, member.port).device) : undefined;
    if (bridge !== undefined) report(tree, bridge, member.link, state.known);
  }

  known(group: number, network: number): Known | undefined {
    return this.joined.get(group)?.get(network)?.known;
  }

  members(group: number, network: number): readonly Interface[] {
    return this.joined.get(group)?.get(network)?.members ?? [];
  }
}

/** A report comes in at `bridge` by `link`. */
function report(tree: BridgeTree, bridge: Bridge, link: Link, known: Known): void {
  const pending: [Bridge, Link][] = [[bridge, link]];
  for (let next = pending.pop(); next !== undefined; next = pending.pop()) {
    const [at, by] = next;
    let links = known.get(at);
    if (links === undefined) known.set(at, (links = new Set()));
    // Where it came in by that link before, all beyond knows already.
    if (links.has(by)) continue;
    links.add(by);
    const out = at.device.snooping ? [...at.routerLinks, ...at.reportLinks] : at.links;
    for (const onward of out) {
      const beyond = onward === by ? undefined : bridgeBeyond(tree, at, onward);
      if (beyond !== undefined) pending.push([beyond, onward]);
    }
  }
}

/** Sends a group into a network; tells each link it takes and the port it leaves by. */
function flow(
  tree: BridgeTree,
  group: number,
  known: Known | undefined,
  from: { link: Link; port: Port },
  visit: (link: Link, out: Port) => void,
): void {
  if (from.link.blocked !== undefined) return;
  visit(from.link, from.port);
  const first = tree.bridges.get(far(from.link, from.port).device);
  if (first === undefined) return;
  const pending: [Bridge, Link][] = [[first, from.link]];
  for (let next = pending.pop(); next !== undefined; next = pending.pop()) {
    const [bridge, by] = next;
    const out = outOf(bridge, group, known);
    if (out === bridge.links) for (const link of bridge.deadEnds) visit(link, portOf(link, bridge.device));
    for (const link of out) {
      if (link === by) continue;
      visit(link, portOf(link, bridge.device));
      const beyond = bridgeBeyond(tree, bridge, link);
      if (beyond !== undefined) pending.push([beyond, link]);
    }
  }
}

/**
 * Whether a bridge knows a group. What is asked for by way of a router port alone it does not keep, as the group goes
 * there anyway; so measured, and other switches may differ.
 */
function isRegistered(bridge: Bridge, members: ReadonlySet<Link>): boolean {
  for (const link of members) if (!bridge.routerLinks.includes(link)) return true;
  return false;
}

function outOf(bridge: Bridge, group: number, known: Known | undefined): Iterable<Link> {
  if (!bridge.device.snooping || isLinkLocalGroup(group)) return bridge.links;
  const members = known?.get(bridge);
  if (members === undefined || !isRegistered(bridge, members)) {
    return bridge.device.unregistered === 'drop' ? bridge.routerLinks : bridge.links;
  }
  if (bridge.routerLinks.every((link) => members.has(link))) return members;
  return new Set([...members, ...bridge.routerLinks]);
}

/** By which interface a receiver joins: its route for the group, else the network it is sent into, else any. */
export function joiningInterface(
  ground: Ground,
  receiver: Device,
  group: number,
  network: number | undefined,
): Interface | undefined {
  const towards = ground.interfaces.towards(receiver, group);
  if (towards?.route !== undefined && towards.route.to.prefix > 0) return towards.by;
  return (network === undefined ? undefined : ground.interfaces.in(receiver, network)) ?? towards?.by;
}

export function deliverMulticast(
  ground: Ground,
  memberships: Memberships,
  stream: Stream,
  source: Device,
  group: number,
): Delivery {
  const towards = ground.interfaces.towards(source, group);
  const receivers = stream.receivers.flatMap((name) => ground.site.deviceByName.get(name) ?? []);
  if (towards === undefined) {
    const why: Obstacle = { obstacle: 'source-not-cabled', device: source.name };
    const others = receivers.filter((device) => device !== source).map(({ name }) => ({ receiver: name, why }));
    const reaches = receivers.filter((device) => device === source).map(({ name }) => name);
    return { stream, source, leaves: undefined, route: undefined, reaches, unreached: others, networks: [] };
  }
  const ways = routedWays(ground, towards.by.network);
  const entered = spread(ground, memberships, stream, group, towards.by, ways);
  const reaches: string[] = [];
  const unreached: Unreached[] = [];
  for (const receiver of receivers) {
    const joined = joiningInterface(ground, receiver, group, towards.by.network);
    if (receiver === source || (joined !== undefined && entered.get(joined.network)?.has(joined.link) === true))
      reaches.push(receiver.name);
    else
      unreached.push({
        receiver: receiver.name,
        why: obstacleOf(ground, memberships, stream, group, towards.by, receiver, joined, entered, ways),
      });
  }
  return {
    stream,
    source,
    leaves: towards.by,
    route: towards.route,
    reaches,
    unreached,
    networks: [...entered.keys()],
  };
}

/** How multicast routers lead from one network to others: by network, the one before it and the routers passed. */
type Ways = ReadonlyMap<number, { readonly before: number; readonly passed: number }>;

function routedWays(ground: Ground, from: number): Ways {
  const ways = new Map([[from, { before: from, passed: 0 }]]);
  for (const [network, { passed }] of ways) {
    for (const router of ground.multicastRouters) {
      if (ground.interfaces.in(router, network) === undefined) continue;
      for (const out of ground.interfaces.of(router)) {
        if (!ways.has(out.network)) ways.set(out.network, { before: network, passed: passed + 1 });
      }
    }
  }
  return ways;
}

/** The networks that have members, and those on the way to them. */
function wantedNetworks(memberships: Memberships, group: number, ways: Ways): ReadonlySet<number> {
  const wanted = new Set<number>();
  for (const network of ways.keys()) {
    if (memberships.members(group, network).length === 0) continue;
    for (let at = network; !wanted.has(at); at = ways.get(at)?.before ?? at) wanted.add(at);
  }
  return wanted;
}

/**
 * Fills the source's network, and those that multicast routers forward it into; tells by network at which hosts' links
 * it arrives.
 */
function spread(
  ground: Ground,
  memberships: Memberships,
  stream: Stream,
  group: number,
  leaves: Interface,
  ways: Ways,
): Map<number, ReadonlySet<Link>> {
  const wanted = wantedNetworks(memberships, group, ways);
  const entered = new Map<number, ReadonlySet<Link>>();
  const queue: { by: Interface; passed: number }[] = [{ by: leaves, passed: 0 }];
  for (const { by, passed } of queue) {
    if (entered.has(by.network)) continue;
    const arrived = new Set<Link>();
    entered.set(by.network, arrived);
    flow(ground.tree(by.network), group, memberships.known(group, by.network), by, (link, out) => {
      ground.crossings.add(link, out, by.network, stream);
      if (!far(link, out).device.bridging) arrived.add(link);
    });
    if (isLinkLocalGroup(group) || stream.ttl <= passed + 1) continue;
    for (const router of ground.multicastRouters) {
      const into = ground.interfaces.in(router, by.network);
      if (into === undefined || into.port === by.port || !arrived.has(into.link)) continue;
      for (const out of ground.interfaces.of(router)) {
        if (!wanted.has(out.network)) continue;
        const leadsOn = [...wanted].some((to) => to !== out.network && ways.get(to)?.before === out.network);
        if (leadsOn || isAskedFor(ground, memberships, group, out)) queue.push({ by: out, passed: passed + 1 });
      }
    }
  }
  return entered;
}

/** Whether a member's report comes to a router's interface: their network may be in parts. */
function isAskedFor(ground: Ground, memberships: Memberships, group: number, out: Interface): boolean {
  return memberships
    .members(group, out.network)
    .some((member) => wayBetween(ground.tree(out.network), member, out) !== undefined);
}

function obstacleOf(
  ground: Ground,
  memberships: Memberships,
  stream: Stream,
  group: number,
  leaves: Interface,
  receiver: Device,
  joined: Interface | undefined,
  entered: ReadonlyMap<number, ReadonlySet<Link>>,
  ways: Ways,
): Obstacle {
  if (receiver.bridging || receiver.kind === 'patch-panel') return { obstacle: 'not-a-host' };
  if (joined === undefined) return { obstacle: 'receiver-not-cabled' };
  const from = ground.networkName(leaves.network);
  const to = ground.networkName(joined.network);
  if (entered.has(joined.network)) return stoppedAt(ground, memberships, group, leaves, joined, to);
  const elsewhere = ground.interfaces.in(receiver, leaves.network);
  if (elsewhere !== undefined) return { obstacle: 'joins-elsewhere', port: joined.port.name, network: to, from };
  if (isLinkLocalGroup(group)) return { obstacle: 'link-local', from, to };
  const passed = ways.get(joined.network)?.passed;
  if (passed !== undefined) {
    return stream.ttl <= passed
      ? { obstacle: 'ttl', ttl: stream.ttl, needed: passed + 1 }
      : { obstacle: 'apart', network: isHeardByRouter(ground, joined) ? from : to };
  }
  const own = ground.interfaces.in(leaves.device, joined.network);
  if (own !== undefined) return { obstacle: 'leaves-elsewhere', port: leaves.port.name, from, own: own.port.name, to };
  const between = ground.routers.filter(
    (device) =>
      ground.interfaces.in(device, leaves.network) !== undefined &&
      ground.interfaces.in(device, joined.network) !== undefined,
  );
  return { obstacle: 'other-network', from, to, routers: between.map(({ name }) => name) };
}

function isHeardByRouter(ground: Ground, joined: Interface): boolean {
  return ground.multicastRouters.some((router) => {
    const own = ground.interfaces.in(router, joined.network);
    return own !== undefined && wayBetween(ground.tree(joined.network), joined, own) !== undefined;
  });
}

/** Follows the way from the sender to the receiver to the bridge that does not pass the group on. */
function stoppedAt(
  ground: Ground,
  memberships: Memberships,
  group: number,
  leaves: Interface,
  joined: Interface,
  network: string,
): Obstacle {
  const tree = ground.tree(joined.network);
  const known = memberships.known(group, joined.network);
  const last = joined.link.blocked === undefined ? tree.bridges.get(far(joined.link, joined.port).device) : undefined;
  const first = joined.network === leaves.network ? tree.bridges.get(far(leaves.link, leaves.port).device) : undefined;
  const bridges = first === undefined || last === undefined ? undefined : bridgesBetween(first, last);
  if (bridges === undefined) return { obstacle: 'apart', network };
  // The group stops at the first bridge from the sender that does not know the receiver.
  const stop = bridges.find((at, index) => {
    const next = bridges[index + 1];
    if (!at.device.snooping || next === undefined) return false;
    const link = linkBetween(at, next);
    return link !== undefined && ![...outOf(at, group, known)].includes(link);
  });
  if (stop === undefined) return { obstacle: 'apart', network };
  const members = known?.get(stop);
  if (members === undefined || !isRegistered(stop, members))
    return { obstacle: 'report-stays', network, bridge: stop.device.name };
  const at = [...members].map((link) => portOf(link, stop.device).name).join(', ');
  return { obstacle: 'known-nearer', network, bridge: stop.device.name, at };
}
