/**
 * Multicast: which hosts have joined which groups, what each bridge knows of them, and which links a group takes.
 *
 * By RFC 4541 §2.1, and as measured on a snooping switch:
 * - reports travel only towards router ports, so a bridge knows a group at the ports where reports came in;
 * - flooded frames also leave towards a port that does not accept them, because spanning tree has it discard or it has
 *   other VLANs, and end there: the bridge at the near end does not know;
 * - a known group goes to those ports and to router ports; an unknown one to router ports, or everywhere if it is not
 *   dropped; 224.0.0.0/24 always goes everywhere; without snooping everything does.
 */

import { lastResult } from '../memo.ts';
import { isLinkLocalGroup } from '../standards/multicast.ts';
import type { Device, Port, Stream } from '../site/model.ts';
import {
  type Bridge,
  type BridgeTree,
  bridgeBeyond,
  bridgeOf,
  bridgesBetween,
  linkBetween,
  pathBetween,
} from './bridge-tree.ts';
import type { Copy, Delivery, Obstacle, Routed, Unreached } from './delivery.ts';
import type { Interface } from './interface.ts';
import { type Link, oppositePort, portOf } from './link.ts';
import type { BroadcastDomain } from './vlan-membership.ts';
import type { RouteEntry } from './route-table.ts';
import type { RoutingContext } from './trace.ts';

/** The links that lead to members of one group, for each bridge of one domain. */
type Known = ReadonlyMap<Bridge, ReadonlySet<Link>>;

interface Joined {
  readonly known: Known;
  readonly members: readonly Interface[];
  /** Ports of routers and hosts that receive reports. */
  readonly heard: ReadonlySet<Port>;
}

/** As `Joined`, while reports still come in. */
interface Joining {
  readonly known: Map<Bridge, Set<Link>>;
  readonly members: Interface[];
  /** The ports of the members. */
  readonly ports: Set<Port>;
  readonly heard: Set<Port>;
}

/** The most that all bridges together know of groups, as links; later groups are not followed. A house has some hundreds. */
const MOST_KNOWN = 300_000;

/** The members of each group, and what the bridges know of them. */
export class Memberships {
  private readonly joined = new Map<number, Map<BroadcastDomain, Joining>>();
  private readonly context: RoutingContext;
  private readonly chosen: ReadonlySet<number>;
  private readonly notFollowed = new Set<number>();
  /** How many links the bridges know, of all groups. */
  private linksKnown = 0;

  /**
   * Every receiver reports its membership before anything is sent: a group may have several streams. `chosen` are
   * groups that screens join and leave.
   */
  constructor(
    context: RoutingContext,
    streams: readonly Pick<Stream, 'group' | 'receivers'>[],
    chosen: Iterable<number>,
  ) {
    this.chosen = new Set(chosen);
    this.context = context;
    for (const { group, receivers } of streams) {
      if (group === undefined) continue;
      if (this.linksKnown > MOST_KNOWN) {
        this.notFollowed.add(group);
        continue;
      }
      for (const receiver of receivers) {
        const device = context.deviceByName.get(receiver);
        const member = device === undefined ? undefined : context.interfaces.towardsGroup(device, group)?.by;
        if (member !== undefined) this.join(group, member);
      }
    }
  }

  /** Whether all members of the group are known; not of those beyond the bound. */
  isFollowed(group: number): boolean {
    return !this.notFollowed.has(group);
  }

  /** Whether screens join and leave the group, so that switches keep it from those that do not show it. */
  isChosen(group: number): boolean {
    return this.chosen.has(group);
  }

  known(group: number, domain: BroadcastDomain): Known | undefined {
    return this.in(group, domain)?.known;
  }

  members(group: number, domain: BroadcastDomain): readonly Interface[] {
    return this.in(group, domain)?.members ?? [];
  }

  /** Whether a router's interface hears that somebody has joined. */
  isHeard(group: number, { domain, port }: Interface): boolean {
    return this.in(group, domain)?.heard.has(port) === true;
  }

  private in(group: number, domain: BroadcastDomain): Joined | undefined {
    return this.joined.get(group)?.get(domain);
  }

  /**
   * A router that hears of a member joins the group at its other interfaces, as a host does (RFC 4605 §4).
   */
  private join(group: number, first: Interface): void {
    const { tree, interfaces, multicastRouters } = this.context;
    const pending = [first];
    for (const member of pending) {
      const { domain } = member;
      const byDomain = this.joined.get(group) ?? new Map<BroadcastDomain, Joining>();
      this.joined.set(group, byDomain);
      const state = byDomain.get(domain) ?? { known: new Map(), members: [], ports: new Set(), heard: new Set() };
      byDomain.set(domain, state);
      if (state.ports.has(member.port)) continue;
      state.ports.add(member.port);
      this.linksKnown += report(tree(domain), member, state);
      if (isLinkLocalGroup(group)) continue;
      for (const router of multicastRouters) {
        const into = interfaces.in(router, domain);
        if (into !== undefined && router !== member.device && state.heard.has(into.port))
          pending.push(...interfaces.of(router).filter((other) => other !== into));
      }
    }
  }
}

/** A host sends a report out of one of its interfaces. Returns how many links more the bridges know. */
function report(tree: BridgeTree, member: Interface, { known, members, heard }: Joining): number {
  let learnt = 0;
  members.push(member);
  const first = bridgeAt(tree, member);
  if (first === undefined) {
    const port = oppositePort(member.link, member.port);
    if (member.link.blocked === undefined && !port.forwards) heard.add(port);
    return learnt;
  }
  const pending: [Bridge, Link][] = [[first, member.link]];
  for (let next = pending.pop(); next !== undefined; next = pending.pop()) {
    const [bridge, by] = next;
    let links = known.get(bridge);
    if (links === undefined) known.set(bridge, (links = new Set()));
    // A report that came in here before has already been passed on.
    if (links.has(by)) continue;
    links.add(by);
    learnt++;
    const out = bridge.snoops ? [...bridge.routerLinks, ...bridge.reportLinks] : bridge.links;
    for (const onward of out) {
      if (onward === by || bridge.deadEnds.includes(onward)) continue;
      const beyond = bridgeBeyond(tree, bridge, onward);
      if (beyond === undefined) heard.add(oppositePort(onward, portOf(onward, bridge.device)));
      else pending.push([beyond, onward]);
    }
  }
  return learnt;
}

/** The bridge that a host is cabled to; `undefined` where there is none, or the link is idle. */
function bridgeAt(tree: BridgeTree, { link, port }: Interface): Bridge | undefined {
  return link.blocked === undefined ? bridgeOf(tree, oppositePort(link, port)) : undefined;
}

/** The copies of a group that is sent into a domain. */
function flow(tree: BridgeTree, group: number, memberships: Memberships, from: Interface): Copy[] {
  const { domain } = tree;
  const known = memberships.known(group, domain);
  const isChosen = memberships.isChosen(group);
  if (from.link.blocked !== undefined) return [];
  const copies: Copy[] = [{ link: from.link, out: from.port, domain, reply: false }];
  const first = bridgeAt(tree, from);
  if (first === undefined) return copies;
  const add = (link: Link, { device }: Bridge): void => {
    copies.push({ link, out: portOf(link, device), domain, reply: false });
  };
  const pending: [Bridge, Link][] = [[first, from.link]];
  for (let next = pending.pop(); next !== undefined; next = pending.pop()) {
    const [bridge, by] = next;
    const out = egressLinks(bridge, group, known, isChosen);
    if (out === bridge.links) for (const link of bridge.deadEnds) add(link, bridge);
    for (const link of out) {
      if (link === by) continue;
      add(link, bridge);
      const beyond = bridgeBeyond(tree, bridge, link);
      if (beyond !== undefined) pending.push([beyond, link]);
    }
  }
  return copies;
}

function egressLinks(bridge: Bridge, group: number, known: Known | undefined, isChosen = false): Iterable<Link> {
  if (!bridge.snoops || isLinkLocalGroup(group)) return bridge.links;
  const members = known?.get(bridge);
  if (members === undefined || !isRegistered(bridge, members)) {
    return isDropped(bridge.device, isChosen) ? bridge.routerLinks : bridge.links;
  }
  if (bridge.routerLinks.every((link) => members.has(link))) return members;
  return new Set([...members, ...bridge.routerLinks]);
}

/** While no screen shows a group that screens choose, a switch that does not declare to flood counts as dropping it. */
function isDropped({ unregistered, unregisteredDeclared }: Device, isChosen: boolean): boolean {
  return unregistered === 'drop' || (isChosen && !unregisteredDeclared);
}

/**
 * Whether a bridge knows a group. It does not keep a group that only router ports ask for, as the group goes there
 * anyway; measured on Open vSwitch, other switches may differ.
 */
function isRegistered(bridge: Bridge, members: ReadonlySet<Link>): boolean {
  for (const link of members) if (!bridge.routerLinks.includes(link)) return true;
  return false;
}

/** A stream to a group, from where it leaves its source. */
interface Sent {
  readonly context: RoutingContext;
  readonly memberships: Memberships;
  readonly stream: Stream;
  readonly group: number;
  readonly leaves: Interface;
  readonly paths: () => RouterPaths;
}

/** The number of multicast routers from the source's domain to each other one. */
type RouterPaths = ReadonlyMap<BroadcastDomain, number>;

export function routeMulticast(
  context: RoutingContext,
  memberships: Memberships,
  stream: Stream,
  source: Device,
  group: number,
): Routed {
  const way = context.interfaces.towardsGroup(source, group);
  if (way?.by === undefined) return { delivery: notSent(context, stream, source, way), copies: [] };
  const { by: leaves, route } = way;
  const paths = lastResult(() => routerPaths(context, leaves.domain));
  const sent: Sent = { context, memberships, stream, group, leaves, paths };
  const { copies, entered } = spread(sent);
  const reaches: string[] = [];
  const unreached: Unreached[] = [];
  for (const name of stream.receivers) {
    const receiver = context.deviceByName.get(name);
    if (receiver === undefined) continue;
    const joined = context.interfaces.towardsGroup(receiver, group)?.by;
    if (receiver === source || (joined !== undefined && entered.get(joined.domain)?.has(joined.link) === true))
      reaches.push(receiver.name);
    else unreached.push({ receiver: receiver.name, why: obstacleOf(sent, receiver, entered) });
  }
  const delivery = { stream, source, leaves, route, reaches, unreached, domains: [...entered.keys()] };
  return { delivery, copies };
}

/** The source has no cable, has no route for the group, or sends it by a port without a cable. */
function notSent(
  { interfaces, deviceByName }: RoutingContext,
  stream: Stream,
  source: Device,
  way: RouteEntry | undefined,
): Delivery {
  const { name: device } = source;
  const why: Obstacle =
    interfaces.of(source).length === 0
      ? { obstacle: 'source-not-cabled', device }
      : way === undefined
        ? { obstacle: 'no-group-route', device }
        : { obstacle: 'into-nothing', device, port: way.port.name, route: way.route };
  const receivers = stream.receivers.filter((name) => deviceByName.has(name));
  // A host takes its own packets in where it sends them, cable or no cable; without a route, sending fails.
  const isLooped = (name: string): boolean => name === device && why.obstacle !== 'no-group-route';
  const unreached = receivers.filter((name) => !isLooped(name)).map((receiver) => ({ receiver, why }));
  const reaches = receivers.filter(isLooped);
  return { stream, source, leaves: undefined, route: way?.route, reaches, unreached, domains: [] };
}

function routerPaths({ interfaces, multicastRouters }: RoutingContext, from: BroadcastDomain): RouterPaths {
  const paths = new Map([[from, 0]]);
  for (const [domain, passed] of paths) {
    for (const router of multicastRouters) {
      if (interfaces.in(router, domain) === undefined) continue;
      for (const out of interfaces.of(router)) if (!paths.has(out.domain)) paths.set(out.domain, passed + 1);
    }
  }
  return paths;
}

/** The domains that a group has come into, each with the links of hosts where it arrives. */
type Entered = ReadonlyMap<BroadcastDomain, ReadonlySet<Link>>;

/** Spreads the group in the source's domain, and in those that multicast routers forward it into. */
function spread(sent: Sent): { copies: Copy[]; entered: Entered } {
  const { context, memberships, stream, group, leaves } = sent;
  const copies: Copy[] = [];
  const entered = new Map<BroadcastDomain, ReadonlySet<Link>>();
  const queue: { by: Interface; passed: number }[] = [{ by: leaves, passed: 0 }];
  for (const { by, passed } of queue) {
    const { domain } = by;
    if (entered.has(domain)) continue;
    const arrived = new Set<Link>();
    entered.set(domain, arrived);
    for (const copy of flow(context.tree(domain), group, memberships, by)) {
      copies.push(copy);
      if (!oppositePort(copy.link, copy.out).forwards) arrived.add(copy.link);
    }
    if (isLinkLocalGroup(group) || stream.ttl <= passed + 1) continue;
    for (const router of context.multicastRouters) {
      const into = context.interfaces.in(router, domain);
      if (into === undefined || into.port === by.port || !arrived.has(into.link)) continue;
      for (const out of context.interfaces.of(router)) {
        if (out !== into && memberships.isHeard(group, out)) queue.push({ by: out, passed: passed + 1 });
      }
    }
  }
  return { copies, entered };
}

function obstacleOf(sent: Sent, receiver: Device, entered: Entered): Obstacle {
  const { context, stream, group, leaves, paths } = sent;
  const { interfaces } = context;
  if ((receiver.bridging && !receiver.routing) || receiver.kind === 'patch-panel') return { obstacle: 'not-a-host' };
  if (interfaces.of(receiver).length === 0) return { obstacle: 'receiver-not-cabled' };
  const way = interfaces.towardsGroup(receiver, group);
  if (way === undefined) return { obstacle: 'no-group-route', device: receiver.name };
  const { by: joined, port, route } = way;
  if (joined === undefined) return { obstacle: 'into-nothing', device: receiver.name, port: port.name, route };
  const from = leaves.domain.name;
  const to = joined.domain.name;
  if (entered.has(joined.domain)) return stoppedAt(sent, joined);
  const elsewhere = interfaces.in(receiver, leaves.domain);
  if (elsewhere !== undefined) return { obstacle: 'joins-elsewhere', port: joined.port.name, network: to, from };
  if (isLinkLocalGroup(group)) return { obstacle: 'link-local', from, to };
  const passed = paths().get(joined.domain);
  if (passed !== undefined) {
    if (stream.ttl <= passed) return { obstacle: 'ttl', ttl: stream.ttl, needed: passed + 1 };
    return reportAstray(sent, entered) ?? { obstacle: 'apart', network: isJoinedToRouter(context, joined) ? from : to };
  }
  const own = interfaces.in(leaves.device, joined.domain);
  if (own !== undefined) return { obstacle: 'leaves-elsewhere', port: leaves.port.name, from, own: own.port.name, to };
  const between = context.routers.filter(
    (device) =>
      interfaces.in(device, leaves.domain) !== undefined && interfaces.in(device, joined.domain) !== undefined,
  );
  return { obstacle: 'other-network', from, to, routers: between.map(({ name }) => name) };
}

/** A network on the way whose router hears of no member there, because another device is the querier. */
function reportAstray({ context, memberships, group, paths }: Sent, entered: Entered): Obstacle | undefined {
  const { interfaces, multicastRouters, tree } = context;
  for (const domain of paths().keys()) {
    const [member] = entered.has(domain) ? [] : memberships.members(group, domain);
    if (member === undefined) continue;
    const network = tree(domain);
    const querier = network.queried.get(bridgeAt(network, member)?.component ?? -1);
    const routers = multicastRouters.flatMap((router) => {
      const at = router === member.device ? undefined : interfaces.in(router, domain);
      return at !== undefined && pathBetween(network, member, at) !== undefined ? [at] : [];
    });
    const [first] = routers;
    if (first === undefined || querier === undefined || routers.some((at) => memberships.isHeard(group, at))) continue;
    return {
      obstacle: 'report-astray',
      network: domain.name,
      router: first.device.name,
      querier: querier.name,
      member: member.device.name,
    };
  }
  return undefined;
}

function isJoinedToRouter({ interfaces, multicastRouters, tree }: RoutingContext, joined: Interface): boolean {
  return multicastRouters.some((router) => {
    const at = interfaces.in(router, joined.domain);
    return at !== undefined && pathBetween(tree(joined.domain), joined, at) !== undefined;
  });
}

/** Follows the path from the sender to the receiver, up to the bridge that does not pass the group on. */
function stoppedAt({ context, memberships, group, leaves }: Sent, joined: Interface): Obstacle {
  const network = joined.domain.name;
  const tree = context.tree(joined.domain);
  const known = memberships.known(group, joined.domain);
  const last = bridgeAt(tree, joined);
  const first = joined.domain === leaves.domain ? bridgeAt(tree, leaves) : undefined;
  const path = first === undefined || last === undefined ? undefined : bridgesBetween(first, last);
  const stop = path?.find((bridge, index) => {
    const next = path[index + 1];
    if (!bridge.snoops || next === undefined) return false;
    const link = linkBetween(bridge, next);
    return link !== undefined && ![...egressLinks(bridge, group, known)].includes(link);
  });
  if (stop === undefined) return { obstacle: 'apart', network };
  const members = known?.get(stop);
  if (members === undefined || !isRegistered(stop, members))
    return { obstacle: 'report-stays', network, bridge: stop.device.name };
  const at = [...members].map((link) => portOf(link, stop.device).name).join(', ');
  return { obstacle: 'known-nearer', network, bridge: stop.device.name, at };
}
