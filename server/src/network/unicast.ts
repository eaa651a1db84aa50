/** Unicast: one copy for each receiver, along the tree of its VLAN, and through routers between VLANs. */

import type { Device, Stream } from '../site/model.ts';
import { pathBetween } from './bridge-tree.ts';
import type { Copy, Delivery, Obstacle, Routed, Unreached } from './delivery.ts';
import type { Interface } from './interfaces.ts';
import type { Hop } from './link.ts';
import type { BroadcastDomain } from './vlan-membership.ts';
import type { Wiring } from './wiring.ts';

/** What the routes of streams are found on. */
export interface RoutingContext extends Wiring {
  readonly deviceByName: ReadonlyMap<string, Device>;
}

/** A step of a route inside one broadcast domain. */
interface Leg {
  readonly from: Interface;
  readonly to: Interface;
}

export function routeUnicast(context: RoutingContext, stream: Stream, source: Device): Routed {
  const reaches: string[] = [];
  const unreached: Unreached[] = [];
  const domains = new Set<BroadcastDomain>();
  const copies: Copy[] = [];
  let leaves: Interface | undefined;
  for (const name of stream.receivers) {
    const receiver = context.deviceByName.get(name);
    if (receiver === undefined) continue;
    if (receiver === source) {
      reaches.push(name);
      continue;
    }
    const found = findRoute(context, stream, source, receiver);
    if ('obstacle' in found) {
      unreached.push({ receiver: name, why: found });
      continue;
    }
    const there = walk(context, found.there);
    const back = walk(context, found.back);
    const broken = [...there, ...back].find(({ hops }) => hops === undefined);
    if (broken !== undefined) {
      unreached.push({ receiver: name, why: { obstacle: 'apart', network: broken.domain.name } });
      continue;
    }
    reaches.push(name);
    leaves ??= found.there[0]?.from;
    for (const { domain } of there) domains.add(domain);
    copies.push(...copiesAlong(there, false), ...copiesAlong(back, true));
  }
  const delivery: Delivery = {
    stream,
    source,
    leaves,
    route: undefined,
    reaches,
    unreached,
    domains: [...domains],
  };
  return { delivery, copies };
}

/** The route of a stream, and of the replies if it is pulled: routers may lead them differently. */
interface Route {
  readonly there: readonly Leg[];
  readonly back: readonly Leg[];
}

interface Walked {
  readonly domain: BroadcastDomain;
  /** `undefined` where nothing joins the ends. */
  readonly hops: readonly Hop[] | undefined;
}

function walk(context: RoutingContext, legs: readonly Leg[]): Walked[] {
  return legs.map(({ from, to }) => ({
    domain: from.domain,
    hops: pathBetween(context.tree(from.domain), from, to),
  }));
}

function copiesAlong(legs: readonly Walked[], reply: boolean): Copy[] {
  return legs.flatMap(({ domain, hops = [] }) => hops.map(({ link, out }) => ({ link, out, domain, reply })));
}

function findRoute(context: RoutingContext, stream: Stream, source: Device, receiver: Device): Route | Obstacle {
  if (receiver.bridging || receiver.kind === 'patch-panel') return { obstacle: 'not-a-host' };
  const sources = context.interfaces.of(source);
  const receivers = context.interfaces.of(receiver);
  if (sources.length === 0) return { obstacle: 'source-not-cabled', device: source.name };
  if (receivers.length === 0) return { obstacle: 'receiver-not-cabled' };
  const leg = direct(context, stream, sources, receivers);
  if (leg === undefined) return routed(context, stream, source, receiver);
  return { there: [leg], back: stream.transport === 'rtsp' ? [{ from: leg.to, to: leg.from }] : [] };
}

/** Within one domain. A stream that is pulled is asked for by the receiver, so its routes choose between several. */
function direct(
  context: RoutingContext,
  stream: Stream,
  sources: readonly Interface[],
  receivers: readonly Interface[],
): Leg | undefined {
  const legs = sources.flatMap((from) =>
    receivers.filter((to) => to.domain === from.domain).map((to) => ({ from, to })),
  );
  if (legs.length < 2) return legs[0];
  const joined = legs.filter(({ from, to }) => pathBetween(context.tree(from.domain), from, to) !== undefined);
  const chosen = joined.find(({ from, to }) => {
    const [asking, asked] = stream.transport === 'rtsp' ? [to, from] : [from, to];
    return asked.address !== undefined && context.interfaces.towards(asking.device, asked.address)?.by === asking;
  });
  return chosen ?? joined[0] ?? legs[0];
}

/** There through the gateway of the source's domain, back through that of the receiver's. */
function routed(context: RoutingContext, stream: Stream, source: Device, receiver: Device): Route | Obstacle {
  const { interfaces } = context;
  const to = pickAddressed(interfaces.of(receiver));
  if (to === undefined) return { obstacle: 'receiver-not-cabled' };
  const pulled = stream.transport === 'rtsp';
  const asked = pickAddressed(interfaces.of(source));
  const from = to.address === undefined ? asked : (interfaces.towards(source, to.address)?.by ?? asked);
  if (from === undefined) return { obstacle: 'source-not-cabled', device: source.name };
  const last = pulled && asked?.address !== undefined ? (interfaces.towards(receiver, asked.address)?.by ?? to) : to;

  const there = byGateway(context, from, last);
  if ('obstacle' in there) return there;
  if (!pulled) return { there, back: [] };
  const back = byGateway(context, last, asked ?? from);
  return 'obstacle' in back ? { ...back, back: true } : { there, back };
}

type NoRoute = Extract<Obstacle, { obstacle: 'no-gateway' | 'no-route' }>;

/** Through the gateway of the sender's domain, and further routers if the gateway is not in the receiver's domain. */
function byGateway(context: RoutingContext, from: Interface, to: Interface): Leg[] | NoRoute {
  const name = from.domain.vlan?.gateway;
  const gateway = name === undefined ? undefined : context.deviceByName.get(name);
  const names = { from: from.domain.name, to: to.domain.name };
  if (gateway === undefined) return { obstacle: 'no-gateway', network: names.from, to: names.to };
  const first = gateway.bridging ? undefined : context.interfaces.in(gateway, from.domain);
  const legs = first === undefined ? undefined : throughRouters(context, first, to);
  if (first === undefined || legs === undefined) return { obstacle: 'no-route', gateway: gateway.name, ...names };
  return [{ from, to: first }, ...legs];
}

function pickAddressed(interfaces: readonly Interface[]): Interface | undefined {
  return interfaces.find(({ address }) => address !== undefined) ?? interfaces[0];
}

/** The fewest routers from one interface of a router to a host's interface. */
function throughRouters(context: RoutingContext, first: Interface, last: Interface): Leg[] | undefined {
  const seen = new Set<Device>([first.device]);
  const queue: { router: Device; legs: Leg[] }[] = [{ router: first.device, legs: [] }];
  for (const { router: from, legs } of queue) {
    for (const out of context.interfaces.of(from)) {
      if (out.domain === last.domain) return [...legs, { from: out, to: last }];
      for (const router of context.routers) {
        if (seen.has(router)) continue;
        const into = context.interfaces.in(router, out.domain);
        if (into === undefined) continue;
        seen.add(router);
        queue.push({ router, legs: [...legs, { from: out, to: into }] });
      }
    }
  }
  return undefined;
}
