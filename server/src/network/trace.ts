/**
 * The way of a packet from device to device, each by its own routes, as measured on the Linux kernel.
 *
 * - A device answers for each of its addresses at any of its ports (ip-sysctl, arp_ignore 0).
 * - A router that sends a packet back into the network it came from redirects the host, which then sends directly (ICMP
 *   redirect, RFC 792; ip-sysctl, send_redirects and accept_redirects).
 * - A router without declared routes knows the networks behind other routers; one with declared routes for hosts knows
 *   only those, its own networks and its gateway.
 */

import type { Device, HostRoute } from '../site/model.ts';
import type { Obstacle } from './delivery.ts';
import type { Interface } from './interface.ts';
import type { RouteEntry } from './route-table.ts';
import type { Wiring } from './wiring.ts';

/** The input for the routes of streams. */
export interface RoutingContext extends Pick<Wiring, 'interfaces' | 'routers' | 'multicastRouters' | 'tree'> {
  readonly deviceByName: ReadonlyMap<string, Device>;
}

/** A step of a route inside one broadcast domain. */
export interface RoutedLeg {
  readonly from: Interface;
  readonly to: Interface;
  /** The declared route that decides it, if any. */
  readonly route: HostRoute | undefined;
}

/** Why a packet does not get there. */
export type TraceObstacle = Extract<Obstacle, { readonly back?: true }>;

export interface Trace {
  /** The legs as far as the packet gets: one that is lost behind a router still travels to it. */
  readonly legs: readonly RoutedLeg[];
  readonly stopped: TraceObstacle | undefined;
}

/** The TTL that hosts send with (RFC 1340, from memory); it ends a packet that goes in a circle. */
const USUAL_TTL = 64;

/**
 * The way from a device to an interface of another one. `answering` is the interface whose address an answer is sent
 * from; else the device sends from the address of the interface that it sends by.
 */
export function trace(context: RoutingContext, source: Device, to: Interface, answering?: Interface): Trace {
  const legs: RoutedLeg[] = [];
  const shortened = (): readonly RoutedLeg[] =>
    // A router's redirect comes from its address in the network of the sender's address.
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

/** The last leg leads to a device that does not forward. */
function noRouter(legs: readonly RoutedLeg[]): TraceObstacle {
  const last = legs.at(-1);
  if (last === undefined) throw new RangeError('a way without legs');
  return {
    obstacle: 'no-router',
    device: last.from.device.name,
    gateway: last.to.device.name,
    network: last.from.domain.name,
    route: last.route,
  };
}

function nextLeg(
  context: RoutingContext,
  at: Device,
  came: Interface | undefined,
  to: Interface,
): RoutedLeg | TraceObstacle {
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

function noRoute(
  { interfaces }: RoutingContext,
  at: Device,
  came: Interface | undefined,
  to: Interface,
): TraceObstacle {
  const names = { to: to.domain.name };
  if (came !== undefined) return { obstacle: 'no-route', gateway: at.name, from: came.domain.name, ...names };
  const own = interfaces.of(at);
  const first = own.find(({ address }) => address !== undefined) ?? own[0];
  return { obstacle: 'no-gateway', network: first?.domain.name ?? at.name, ...names };
}

function isUsualDefault({ route, to }: RouteEntry): boolean {
  return route === undefined && to.prefix === 0;
}

/** The leg towards the nearest router in the network; the first of several that are equally near. */
function towardsOtherRouter(context: RoutingContext, from: Device, last: Interface): RoutedLeg | undefined {
  const seen = new Set<Device>([from]);
  const queue: { router: Device; first: RoutedLeg | undefined }[] = [{ router: from, first: undefined }];
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

function circle(legs: readonly RoutedLeg[]): TraceObstacle {
  const last = legs.slice(-8).map(({ from }) => from.device.name);
  return { obstacle: 'circle', devices: [...new Set(last)] };
}

/** A router that would send a packet back into the host's network redirects the host, which then sends directly. */
function withoutDetours(legs: readonly RoutedLeg[]): readonly RoutedLeg[] {
  const [first, second, ...others] = legs;
  if (first === undefined || second === undefined || second.from !== first.to) return legs;
  // A host ignores a redirect to itself.
  if (second.to.device === first.from.device) return legs;
  return withoutDetours([{ ...first, to: second.to }, ...others]);
}
