/** Unicast: one copy for each receiver, along the tree of its VLAN, and through routers between VLANs. */

import { type Device, type Stream, isRtsp } from '../site/model.ts';
import { pathBetween } from './bridge-tree.ts';
import {
  type Copy,
  type Delivery,
  MOST_COPIES,
  NOT_FOLLOWED,
  type Obstacle,
  type Routed,
  type Unreached,
} from './delivery.ts';
import type { Interface } from './interface.ts';
import type { Direction } from './link.ts';
import type { BroadcastDomain } from './vlan-membership.ts';
import { type RoutedLeg, type RoutingContext, type TraceObstacle, type Trace, trace } from './trace.ts';

export function routeUnicast(context: RoutingContext, stream: Stream, source: Device): Routed {
  const reaches: string[] = [];
  const unreached: Unreached[] = [];
  const domains: BroadcastDomain[] = [];
  const copies: Copy[] = [];
  let leaves: Interface | undefined;
  for (const name of stream.receivers) {
    const receiver = context.deviceByName.get(name);
    if (receiver === undefined) continue;
    if (copies.length > MOST_COPIES) {
      unreached.push({ receiver: name, why: NOT_FOLLOWED });
      continue;
    }
    if (receiver === source) {
      reaches.push(name);
      continue;
    }
    const found = findRoute(context, stream, source, receiver);
    if ('obstacle' in found) {
      unreached.push({ receiver: name, why: found });
      continue;
    }
    const there = walk(context, found.there.legs);
    const back = walk(context, found.back.legs);
    const broken = there.find(isBroken) ?? back.find(isBroken);
    const why: Obstacle | undefined =
      broken !== undefined ? { obstacle: 'apart', network: broken.domain.name } : stoppedOf(found);
    if (why !== undefined) {
      unreached.push({ receiver: name, why });
      // A source that sends unasked does not learn that its packets are lost on the way.
      if (!isPulled(stream)) addCopies(copies, beforeBreak(there), false);
      continue;
    }
    reaches.push(name);
    leaves ??= found.there.legs[0]?.from;
    for (const { domain } of there) if (!domains.includes(domain)) domains.push(domain);
    addCopies(copies, there, false);
    addCopies(copies, back, true);
  }
  const delivery: Delivery = {
    stream,
    source,
    leaves,
    route: undefined,
    reaches,
    unreached,
    domains,
  };
  return { delivery, copies };
}

/** The route of a stream, and of the replies if it is pulled; the two may take different ways. */
interface Route {
  readonly there: Trace;
  readonly back: Trace;
}

/** A receiver that asks by a port without a cable gets no answer: this comes before any obstacle on the way there. */
function stoppedOf({ there, back }: Route): Obstacle | undefined {
  const unasked: Obstacle | undefined = back.stopped === undefined ? undefined : { ...back.stopped, back: true };
  return unasked?.obstacle === 'into-nothing' ? unasked : (there.stopped ?? unasked);
}

const NOTHING: Trace = { legs: [], stopped: undefined };

function isPulled({ transport }: Stream): boolean {
  return isRtsp(transport);
}

interface Walked {
  readonly domain: BroadcastDomain;
  /** `undefined` where nothing joins the ends. */
  readonly hops: readonly Direction[] | undefined;
}

function walk(context: RoutingContext, legs: readonly RoutedLeg[]): Walked[] {
  return legs.map(({ from, to }) => ({
    domain: from.domain,
    hops: pathBetween(context.tree(from.domain), from, to),
  }));
}

function isBroken({ hops }: Walked): boolean {
  return hops === undefined;
}

function beforeBreak(legs: readonly Walked[]): readonly Walked[] {
  const broken = legs.findIndex(isBroken);
  return broken === -1 ? legs : legs.slice(0, broken);
}

function addCopies(copies: Copy[], legs: readonly Walked[], reply: boolean): void {
  for (const { domain, hops = [] } of legs) for (const { link, out } of hops) copies.push({ link, out, domain, reply });
}

function findRoute(context: RoutingContext, stream: Stream, source: Device, receiver: Device): Route | Obstacle {
  if ((receiver.bridging && !receiver.routing) || receiver.kind === 'patch-panel') return { obstacle: 'not-a-host' };
  if (context.interfaces.of(source).length === 0) return { obstacle: 'source-not-cabled', device: source.name };
  const to = addressedInterface(context, receiver, source);
  if (to === undefined) return { obstacle: 'receiver-not-cabled' };
  if (!isPulled(stream)) return { there: allowed(trace(context, source, to)), back: NOTHING };
  const asked = addressedInterface(context, source, receiver);
  if (asked === undefined) return { obstacle: 'source-not-cabled', device: source.name };
  const back = allowed(trace(context, receiver, asked));
  // The answer goes to the address that the request comes from.
  const asking = back.stopped === undefined ? (back.legs[0]?.from ?? to) : to;
  return { there: trace(context, source, asking, asked), back };
}

/** Cuts the trace at the first router where the VLANs do not allow it on. */
function allowed(traced: Trace): Trace {
  const { legs, stopped } = traced;
  const refused = stopped ?? notAllowed(legs);
  return refused === stopped ? traced : { legs: legs.slice(0, 1), stopped: refused };
}

/** Refused where the asking VLAN does not reach the asked one, or a VLAN is kept from the Internet. */
function notAllowed(legs: readonly RoutedLeg[]): TraceObstacle | undefined {
  const from = legs[0]?.from;
  const to = legs.at(-1)?.to;
  if (from === undefined || to === undefined || to.domain === from.domain) return undefined;
  const outside = [from, to].find(({ device }) => device.kind === 'internet');
  if (outside !== undefined) {
    const { domain } = outside === from ? to : from;
    return domain.vlan?.internet === false
      ? { obstacle: 'not-allowed', from: domain.name, to: outside.device.name, isInternet: true }
      : undefined;
  }
  const { reaches } = from.domain.vlan ?? {};
  const asked = to.domain.vlan?.name;
  if (reaches === undefined || asked === undefined || reaches.includes(asked)) return undefined;
  return { obstacle: 'not-allowed', from: from.domain.name, to: asked, isInternet: false };
}

/** The asking host does not notice a failed cable at either end, and sends as before. */
function isUnaware(from: Interface, to: Interface): boolean {
  return from.link.failed || to.link.failed;
}

/**
 * The interface that another device addresses when it sends to a device or asks it: in a network that both are in, the
 * one that the other's routes lead to; else the first with an address.
 */
export function addressedInterface(
  { interfaces, tree }: Pick<RoutingContext, 'interfaces' | 'tree'>,
  asked: Device,
  asking: Device,
): Interface | undefined {
  const own = interfaces.of(asked);
  const others = interfaces.of(asking);
  const [only] = own;
  // Most hosts have one interface, which is asked by everybody.
  if (only === undefined || (own.length === 1 && others.length === 1)) return only;
  const shared: { readonly from: Interface; readonly to: Interface }[] = [];
  for (const to of own) for (const from of others) if (from.domain === to.domain) shared.push({ from, to });
  if (shared.length === 0 && asking.kind === 'internet') {
    // From outside, a device is reached at the interface by which it sends out.
    const out = others.map((theirs) => interfaces.towards(asked, theirs)?.by);
    const way = own.find((at) => out.includes(at));
    if (way !== undefined) return way;
  }
  if (shared.length < 2) return shared[0]?.to ?? own.find(({ address }) => address !== undefined) ?? own[0];
  const joined = shared.filter(
    ({ from, to }) => isUnaware(from, to) || pathBetween(tree(from.domain), from, to) !== undefined,
  );
  const chosen = joined.find(({ from, to }) => to.address !== undefined && interfaces.towards(asking, to)?.by === from);
  return (chosen ?? joined[0] ?? shared[0])?.to;
}
