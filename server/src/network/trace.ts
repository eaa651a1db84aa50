/**
 * The way of a packet from device to device, each by its own routes, as the kernel of Linux was measured to send it.
 *
 * - A device answers for each of its addresses at any of its ports (ip-sysctl, arp_ignore 0).
 * - A router that sends a packet back into the network it came from says so to the host, which sends directly from then
 *   (ICMP redirect, RFC 792; ip-sysctl, send_redirects and accept_redirects).
 * - A router whose routes the site does not say knows the networks behind other routers; one that has routes for hosts
 *   in the site knows those, its own networks and its gateway, and nothing else.
 */

import type { Device, HostRoute } from '../site/model.ts';
import type { Obstacle } from './delivery.ts';
import type { Interface } from './interface.ts';
import type { Way } from './route-table.ts';
import type { Wiring } from './wiring.ts';

/** What the routes of streams are found on. */
export interface RoutingContext extends Pick<Wiring, 'interfaces' | 'routers' | 'multicastRouters' | 'tree'> {
  readonly deviceByName: ReadonlyMap<string, Device>;
}

/** A step of a route inside one broadcast domain. */
export interface Leg {
  readonly from: Interface;
  readonly to: Interface;
  /** Where the site says the route. */
  readonly route: HostRoute | undefined;
}

/** Why a packet does not get there. */
export type Stopped = Extract<Obstacle, { readonly back?: true }>;

export interface Trace {
  /** As far as it gets: what is lost behind a router still travels to it. */
  readonly legs: readonly Leg[];
  readonly stopped: Stopped | undefined;
}

/** The TTL that hosts send with (RFC 1340, from memory); a packet that goes in a circle ends with it. */
const USUAL_TTL = 64;

/**
 * From a device to an interface of another one. `answering`: the interface whose address it sends from, where it
 * answers; else that of the one it sends by.
 */
export function trace(context: RoutingContext, source: Device, to: Interface, answering?: Interface): Trace {
  const legs: Leg[] = [];
  const shortened = (): readonly Leg[] =>
    // What the router says of the shorter way comes from its address in the network of the sender's address.
    answering === undefined || answering === legs[0]?.from ? withoutDetours(legs) : legs;
  let at = source;
  while (at !== to.device) {
    if (legs.length === USUAL_TTL) return { legs, stopped: circle(legs) };
    const came = legs.at(-1)?.to;
    if (came !== undefined && !context.interfaces.forwards(at)) return { legs: shortened(), stopped: noRouter(legs) };
    const next = nextLeg(context, at, came, to);
    if ('obstacle' in next) return { legs: shortened(), stopped: next };
    legs.push(next);
    at = next.to.device;
  }
  return { legs: shortened(), stopped: undefined };
}

/** The last one was handed to a device that does not hand it on. */
function noRouter(legs: readonly Leg[]): Stopped {
  const last = legs.at(-1);
  if (last === undefined) throw new RangeError('a way of no steps');
  return {
    obstacle: 'no-router',
    device: last.from.device.name,
    gateway: last.to.device.name,
    network: last.from.domain.name,
    route: last.route,
  };
}

function nextLeg(context: RoutingContext, at: Device, came: Interface | undefined, to: Interface): Leg | Stopped {
  const { interfaces } = context;
  const way = interfaces.towards(at, to);
  if (came !== undefined && (way === undefined || isUsualDefault(way)) && !interfaces.table(at).hasUnicastRoutes) {
    const learnt = towardsOtherRouter(context, at, to);
    if (learnt !== undefined) return learnt;
  }
  if (way === undefined) return noRoute(context, at, came, to);
  const { by, via, port, route } = way;
  if (by === undefined) return { obstacle: 'into-nothing', device: at.name, port: port.name, route };
  const network = by.domain.name;
  if (via === undefined) {
    const own = interfaces.of(to.device);
    const found =
      own.find(({ domain, address }) => domain === by.domain && address === to.address) ??
      own.find(({ domain }) => domain === by.domain);
    if (found !== undefined) return { from: by, to: found, route };
    return { obstacle: 'not-on-link', device: at.name, port: port.name, network, to: to.domain.name, route };
  }
  const next = via.at;
  if (next === undefined) {
    if (route?.via !== undefined) return { obstacle: 'no-such-gateway', device: at.name, via: route.via, route };
    return { obstacle: 'no-route', gateway: by.domain.vlan?.gateway ?? '', from: network, to: to.domain.name };
  }
  return { from: by, to: next, route };
}

function noRoute({ interfaces }: RoutingContext, at: Device, came: Interface | undefined, to: Interface): Stopped {
  const names = { to: to.domain.name };
  if (came !== undefined) return { obstacle: 'no-route', gateway: at.name, from: came.domain.name, ...names };
  const own = interfaces.of(at);
  const first = own.find(({ address }) => address !== undefined) ?? own[0];
  return { obstacle: 'no-gateway', network: first?.domain.name ?? at.name, ...names };
}

function isUsualDefault({ route, to }: Way): boolean {
  return route === undefined && to.prefix === 0;
}

/** Towards the nearest router that is in the network: the first of those that are equally near. */
function towardsOtherRouter(context: RoutingContext, from: Device, last: Interface): Leg | undefined {
  const seen = new Set<Device>([from]);
  const queue: { router: Device; first: Leg | undefined }[] = [{ router: from, first: undefined }];
  for (const { router: at, first } of queue) {
    for (const out of context.interfaces.of(at)) {
      if (first !== undefined && out.domain === last.domain) return first;
      for (const router of context.routers) {
        if (seen.has(router)) continue;
        const into = context.interfaces.in(router, out.domain);
        if (into === undefined) continue;
        seen.add(router);
        queue.push({ router, first: first ?? { from: out, to: into, route: undefined } });
      }
    }
  }
  return undefined;
}

function circle(legs: readonly Leg[]): Stopped {
  const last = legs.slice(-8).map(({ from }) => from.device.name);
  return { obstacle: 'circle', devices: [...new Set(last)] };
}

/** Where a router would send a packet of a host back into the same network, the host is told and sends directly. */
function withoutDetours(legs: readonly Leg[]): readonly Leg[] {
  const [first, second, ...others] = legs;
  if (first === undefined || second === undefined || second.from !== first.to) return legs;
  // No host takes itself for a gateway.
  if (second.to.device === first.from.device) return legs;
  return withoutDetours([{ ...first, to: second.to }, ...others]);
}
