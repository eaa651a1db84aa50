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
import type { Device, Stream } from '../site/model.ts';
import { type Bridge, type BridgeTree, bridgeBeyond, bridgesBetween, linkBetween, pathBetween } from './bridge-tree.ts';
import type { Copy, Obstacle, Routed, Unreached } from './delivery.ts';
import type { Interface } from './interfaces.ts';
import { type Hop, type Link, oppositePort, portOf } from './link.ts';
import type { BroadcastDomain } from './vlan-membership.ts';
import type { RoutingContext } from './unicast.ts';

/** What the bridges of one domain know of one group: the links that lead to members. */
type Known = ReadonlyMap<Bridge, ReadonlySet<Link>>;

interface Joined {
  readonly known: Known;
  readonly members: readonly Interface[];
}

/** The same while reports still come in. */
interface Joining {
  readonly known: Map<Bridge, Set<Link>>;
  readonly members: Interface[];
}

/** Who has joined each group, and what the bridges know of it. */
export class Memberships {
  private readonly joined: ReadonlyMap<number, ReadonlyMap<BroadcastDomain, Joined>>;

  private readonly chosen: ReadonlySet<number>;

  /**
   * Every receiver reports its membership before anything is sent: a group may have several streams. `chosen` are
   * groups that screens join and leave.
   */
  constructor(context: RoutingContext, streams: readonly Stream[], chosen: ReadonlySet<number> = new Set()) {
    this.chosen = chosen;
    const joined = new Map<number, Map<BroadcastDomain, Joining>>();
    for (const { group, source: name, receivers } of streams) {
      if (group === undefined) continue;
      const source = name === undefined ? undefined : context.deviceByName.get(name);
      const domain = source === undefined ? undefined : context.interfaces.towards(source, group)?.by.domain;
      for (const receiver of receivers) {
        const device = context.deviceByName.get(receiver);
        const member = device === undefined ? undefined : joiningInterface(context, device, group, domain);
        if (member === undefined) continue;
        const byDomain = joined.get(group) ?? new Map<BroadcastDomain, Joining>();
        joined.set(group, byDomain);
        const state = byDomain.get(member.domain) ?? { known: new Map(), members: [] };
        byDomain.set(member.domain, state);
        join(context.tree(member.domain), member, state);
      }
    }
    this.joined = joined;
  }

  /** Whether screens join and leave it, so that switches keep it from those that do not show it. */
  isChosen(group: number): boolean {
    return this.chosen.has(group);
  }

  known(group: number, domain: BroadcastDomain): Known | undefined {
    return this.joined.get(group)?.get(domain)?.known;
  }

  members(group: number, domain: BroadcastDomain): readonly Interface[] {
    return this.joined.get(group)?.get(domain)?.members ?? [];
  }
}

/** By which interface a receiver joins: its route for the group, else the domain it is sent into, else any. */
export function joiningInterface(
  { interfaces }: RoutingContext,
  receiver: Device,
  group: number,
  domain: BroadcastDomain | undefined,
): Interface | undefined {
  const towards = interfaces.towards(receiver, group);
  if (towards?.route !== undefined && towards.route.to.prefix > 0) return towards.by;
  return (domain === undefined ? undefined : interfaces.in(receiver, domain)) ?? towards?.by;
}

/** A host sends a report out of one of its interfaces. */
function join(tree: BridgeTree, member: Interface, { known, members }: Joining): void {
  if (members.some(({ port }) => port === member.port)) return;
  members.push(member);
  const first = bridgeAt(tree, member);
  if (first === undefined) return;
  const pending: [Bridge, Link][] = [[first, member.link]];
  for (let next = pending.pop(); next !== undefined; next = pending.pop()) {
    const [bridge, by] = next;
    let links = known.get(bridge);
    if (links === undefined) known.set(bridge, (links = new Set()));
    // Where it came in by that link before, all beyond knows already.
    if (links.has(by)) continue;
    links.add(by);
    const out = bridge.device.snooping ? [...bridge.routerLinks, ...bridge.reportLinks] : bridge.links;
    for (const onward of out) {
      const beyond = onward === by ? undefined : bridgeBeyond(tree, bridge, onward);
      if (beyond !== undefined) pending.push([beyond, onward]);
    }
  }
}

/** The bridge that a host is cabled to; `undefined` where spanning tree has the link idle, or there is none. */
function bridgeAt(tree: BridgeTree, { link, port }: Interface): Bridge | undefined {
  return link.blocked === undefined ? tree.bridges.get(oppositePort(link, port).device) : undefined;
}

/** Where a group that is sent into a domain goes. */
function flow(tree: BridgeTree, group: number, memberships: Memberships, from: Interface): Hop[] {
  const known = memberships.known(group, tree.domain);
  const isChosen = memberships.isChosen(group);
  if (from.link.blocked !== undefined) return [];
  const hops: Hop[] = [{ link: from.link, out: from.port }];
  const first = bridgeAt(tree, from);
  if (first === undefined) return hops;
  const pending: [Bridge, Link][] = [[first, from.link]];
  for (let next = pending.pop(); next !== undefined; next = pending.pop()) {
    const [bridge, by] = next;
    const out = egressLinks(bridge, group, known, isChosen);
    if (out === bridge.links) for (const link of bridge.deadEnds) hops.push({ link, out: portOf(link, bridge.device) });
    for (const link of out) {
      if (link === by) continue;
      hops.push({ link, out: portOf(link, bridge.device) });
      const beyond = bridgeBeyond(tree, bridge, link);
      if (beyond !== undefined) pending.push([beyond, link]);
    }
  }
  return hops;
}

function egressLinks(bridge: Bridge, group: number, known: Known | undefined, isChosen = false): Iterable<Link> {
  if (!bridge.device.snooping || isLinkLocalGroup(group)) return bridge.links;
  const members = known?.get(bridge);
  if (members === undefined || !isRegistered(bridge, members)) {
    return isDropped(bridge.device, isChosen) ? bridge.routerLinks : bridge.links;
  }
  if (bridge.routerLinks.every((link) => members.has(link))) return members;
  return new Set([...members, ...bridge.routerLinks]);
}

/** Of a group that screens choose, a switch that is not said to flood it is taken to drop it while none shows it. */
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
  readonly paths: RouterPaths;
}

/** How multicast routers lead from one domain to others: by domain, the one before it and the routers passed. */
type RouterPaths = ReadonlyMap<BroadcastDomain, { readonly before: BroadcastDomain; readonly passed: number }>;

export function routeMulticast(
  context: RoutingContext,
  memberships: Memberships,
  stream: Stream,
  source: Device,
  group: number,
): Routed {
  const egress = context.interfaces.towards(source, group);
  const receivers = stream.receivers.flatMap((name) => context.deviceByName.get(name) ?? []);
  if (egress === undefined) return { delivery: notCabled(stream, source, receivers), copies: [] };
  const { by: leaves, route } = egress;
  const sent: Sent = { context, memberships, stream, group, leaves, paths: routerPaths(context, leaves.domain) };
  const { copies, entered } = spread(sent);
  const reaches: string[] = [];
  const unreached: Unreached[] = [];
  for (const receiver of receivers) {
    const joined = joiningInterface(context, receiver, group, leaves.domain);
    if (receiver === source || (joined !== undefined && entered.get(joined.domain)?.has(joined.link) === true))
      reaches.push(receiver.name);
    else unreached.push({ receiver: receiver.name, why: obstacleOf(sent, receiver, joined, entered) });
  }
  const delivery = { stream, source, leaves, route, reaches, unreached, domains: [...entered.keys()] };
  return { delivery, copies };
}

function notCabled(stream: Stream, source: Device, receivers: readonly Device[]): Routed['delivery'] {
  const why: Obstacle = { obstacle: 'source-not-cabled', device: source.name };
  const unreached = receivers.filter((device) => device !== source).map(({ name }) => ({ receiver: name, why }));
  const reaches = receivers.filter((device) => device === source).map(({ name }) => name);
  return { stream, source, leaves: undefined, route: undefined, reaches, unreached, domains: [] };
}

function routerPaths({ interfaces, multicastRouters }: RoutingContext, from: BroadcastDomain): RouterPaths {
  const paths = new Map([[from, { before: from, passed: 0 }]]);
  for (const [domain, { passed }] of paths) {
    for (const router of multicastRouters) {
      if (interfaces.in(router, domain) === undefined) continue;
      for (const out of interfaces.of(router)) {
        if (!paths.has(out.domain)) paths.set(out.domain, { before: domain, passed: passed + 1 });
      }
    }
  }
  return paths;
}

/** By domain that a group has come into, the hosts' links at which it arrives. */
type Entered = ReadonlyMap<BroadcastDomain, ReadonlySet<Link>>;

/** Fills the source's domain, and those that multicast routers forward it into. */
function spread(sent: Sent): { copies: Copy[]; entered: Entered } {
  const { context, memberships, stream, group, leaves, paths } = sent;
  const wanted = wantedDomains(sent);
  const copies: Copy[] = [];
  const entered = new Map<BroadcastDomain, ReadonlySet<Link>>();
  const queue: { by: Interface; passed: number }[] = [{ by: leaves, passed: 0 }];
  for (const { by, passed } of queue) {
    const { domain } = by;
    if (entered.has(domain)) continue;
    const arrived = new Set<Link>();
    entered.set(domain, arrived);
    for (const { link, out } of flow(context.tree(domain), group, memberships, by)) {
      copies.push({ link, out, domain, reply: false });
      if (!oppositePort(link, out).device.bridging) arrived.add(link);
    }
    if (isLinkLocalGroup(group) || stream.ttl <= passed + 1) continue;
    for (const router of context.multicastRouters) {
      const into = context.interfaces.in(router, domain);
      if (into === undefined || into.port === by.port || !arrived.has(into.link)) continue;
      for (const out of context.interfaces.of(router)) {
        if (!wanted.has(out.domain)) continue;
        const leadsOn = [...wanted].some((to) => to !== out.domain && paths.get(to)?.before === out.domain);
        if (leadsOn || isAskedFor(sent, out)) queue.push({ by: out, passed: passed + 1 });
      }
    }
  }
  return { copies, entered };
}

/** The domains that have members, and those on the path to them. */
function wantedDomains({ memberships, group, paths }: Sent): ReadonlySet<BroadcastDomain> {
  const wanted = new Set<BroadcastDomain>();
  for (const domain of paths.keys()) {
    if (memberships.members(group, domain).length === 0) continue;
    for (let at = domain; !wanted.has(at); at = paths.get(at)?.before ?? at) wanted.add(at);
  }
  return wanted;
}

/** Whether a member's report comes to a router's interface: their domain may be in parts. */
function isAskedFor({ context, memberships, group }: Sent, out: Interface): boolean {
  return memberships
    .members(group, out.domain)
    .some((member) => pathBetween(context.tree(out.domain), member, out) !== undefined);
}

function obstacleOf(sent: Sent, receiver: Device, joined: Interface | undefined, entered: Entered): Obstacle {
  const { context, stream, group, leaves, paths } = sent;
  const { interfaces } = context;
  if (receiver.bridging || receiver.kind === 'patch-panel') return { obstacle: 'not-a-host' };
  if (joined === undefined) return { obstacle: 'receiver-not-cabled' };
  const from = leaves.domain.name;
  const to = joined.domain.name;
  if (entered.has(joined.domain)) return stoppedAt(sent, joined);
  const elsewhere = interfaces.in(receiver, leaves.domain);
  if (elsewhere !== undefined) return { obstacle: 'joins-elsewhere', port: joined.port.name, network: to, from };
  if (isLinkLocalGroup(group)) return { obstacle: 'link-local', from, to };
  const passed = paths.get(joined.domain)?.passed;
  if (passed !== undefined) {
    return stream.ttl <= passed
      ? { obstacle: 'ttl', ttl: stream.ttl, needed: passed + 1 }
      : { obstacle: 'apart', network: isHeardByRouter(context, joined) ? from : to };
  }
  const own = interfaces.in(leaves.device, joined.domain);
  if (own !== undefined) return { obstacle: 'leaves-elsewhere', port: leaves.port.name, from, own: own.port.name, to };
  const between = context.routers.filter(
    (device) =>
      interfaces.in(device, leaves.domain) !== undefined && interfaces.in(device, joined.domain) !== undefined,
  );
  return { obstacle: 'other-network', from, to, routers: between.map(({ name }) => name) };
}

function isHeardByRouter({ interfaces, multicastRouters, tree }: RoutingContext, joined: Interface): boolean {
  return multicastRouters.some((router) => {
    const own = interfaces.in(router, joined.domain);
    return own !== undefined && pathBetween(tree(joined.domain), joined, own) !== undefined;
  });
}

/** Follows the path from the sender to the receiver, to the bridge that does not pass the group on. */
function stoppedAt({ context, memberships, group, leaves }: Sent, joined: Interface): Obstacle {
  const network = joined.domain.name;
  const tree = context.tree(joined.domain);
  const known = memberships.known(group, joined.domain);
  const last = bridgeAt(tree, joined);
  const first = joined.domain === leaves.domain ? bridgeAt(tree, leaves) : undefined;
  const path = first === undefined || last === undefined ? undefined : bridgesBetween(first, last);
  const stop = path?.find((bridge, index) => {
    const next = path[index + 1];
    if (!bridge.device.snooping || next === undefined) return false;
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
