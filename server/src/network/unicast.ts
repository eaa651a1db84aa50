/** Unicast: one copy a receiver, along the tree of its VLAN, and between VLANs by way of routers. */

import type { Device, Site, Stream } from '../site/model.ts';
import type { Crossings } from './crossings.ts';
import type { Delivery, Obstacle, Unreached } from './delivery.ts';
import type { Interface, Interfaces } from './interfaces.ts';
import { type BridgeTree, wayBetween } from './bridge-tree.ts';

/** What the ways of streams are found on. */
export interface Ground {
  readonly site: Site;
  readonly interfaces: Interfaces;
  readonly crossings: Crossings;
  tree(network: number): BridgeTree;
  networkName(network: number): string;
  /** Of several on equal ways the first forwards. */
  readonly routers: readonly Device[];
  readonly multicastRouters: readonly Device[];
}

/** A step of the way inside one network. */
interface Leg {
  readonly from: Interface;
  readonly to: Interface;
}

export function deliverUnicast(ground: Ground, stream: Stream, source: Device): Delivery {
  const reaches: string[] = [];
  const unreached: Unreached[] = [];
  const networks = new Set<number>();
  let leaves: Interface | undefined;
  for (const name of stream.receivers) {
    const receiver = ground.site.deviceByName.get(name);
    if (receiver === undefined) continue;
    if (receiver === source) {
      reaches.push(name);
      continue;
    }
    const found = findRoute(ground, stream, source, receiver);
    if ('obstacle' in found) {
      unreached.push({ receiver: name, why: found });
      continue;
    }
    const there = waysOf(ground, found.there);
    const back = waysOf(ground, found.back);
    const broken = there.find(isBroken) ?? back.find(isBroken);
    if (broken !== undefined) {
      unreached.push({
        receiver: name,
        why: { obstacle: 'apart', network: ground.networkName(broken.leg.from.network) },
      });
      continue;
    }
    reaches.push(name);
    leaves ??= found.there[0]?.from;
    for (const { leg, way } of there) {
      networks.add(leg.from.network);
      for (const { link, out } of way ?? []) ground.crossings.add(link, out, leg.from.network, stream);
    }
    for (const { leg, way } of back) {
      for (const { link, out } of way ?? []) ground.crossings.add(link, out, leg.from.network, stream, true);
    }
  }
  return { stream, source, leaves, route: undefined, reaches, unreached, networks: [...networks] };
}

/** The way of a stream, and that of what goes back where it is pulled: routers may lead them differently. */
interface Route {
  readonly there: readonly Leg[];
  readonly back: readonly Leg[];
}

interface Walked {
  readonly leg: Leg;
  readonly way: ReturnType<typeof wayBetween>;
}

function isBroken({ way }: Walked): boolean {
  return way === undefined;
}

function waysOf(ground: Ground, legs: readonly Leg[]): Walked[] {
  return legs.map((leg) => ({ leg, way: wayBetween(ground.tree(leg.from.network), leg.from, leg.to) }));
}

function findRoute(ground: Ground, stream: Stream, source: Device, receiver: Device): Route | Obstacle {
  if (receiver.bridging || receiver.kind === 'patch-panel') return { obstacle: 'not-a-host' };
  const sources = ground.interfaces.of(source);
  const receivers = ground.interfaces.of(receiver);
  if (sources.length === 0) return { obstacle: 'source-not-cabled', device: source.name };
  if (receivers.length === 0) return { obstacle: 'receiver-not-cabled' };
  const leg = direct(ground, stream, sources, receivers);
  if (leg === undefined) return routed(ground, stream, source, receiver);
  return { there: [leg], back: stream.transport === 'rtsp' ? [{ from: leg.to, to: leg.from }] : [] };
}

/** Within one network. A stream that is pulled is asked for by the receiver, so its routes choose between several. */
function direct(
  ground: Ground,
  stream: Stream,
  sources: readonly Interface[],
  receivers: readonly Interface[],
): Leg | undefined {
  const legs = sources.flatMap((from) =>
    receivers.filter((to) => to.network === from.network).map((to) => ({ from, to })),
  );
  if (legs.length < 2) return legs[0];
  const joined = legs.filter(({ from, to }) => wayBetween(ground.tree(from.network), from, to) !== undefined);
  const chosen = joined.find(({ from, to }) => {
    const [asking, asked] = stream.transport === 'rtsp' ? [to, from] : [from, to];
    return asked.address !== undefined && ground.interfaces.towards(asking.device, asked.address)?.by === asking;
  });
  return chosen ?? joined[0] ?? legs[0];
}

/** There by way of the gateway of the source's network, back by way of that of the receiver's. */
function routed(ground: Ground, stream: Stream, source: Device, receiver: Device): Route | Obstacle {
  const to = pickAddressed(ground.interfaces.of(receiver));
  if (to === undefined) return { obstacle: 'receiver-not-cabled' };
  const pulled = stream.transport === 'rtsp';
  const asked = pickAddressed(ground.interfaces.of(source));
  const from = to.address === undefined ? asked : (ground.interfaces.towards(source, to.address)?.by ?? asked);
  if (from === undefined) return { obstacle: 'source-not-cabled', device: source.name };
  const last =
    pulled && asked?.address !== undefined ? (ground.interfaces.towards(receiver, asked.address)?.by ?? to) : to;

  const there = byGateway(ground, from, last);
  if ('obstacle' in there) return there;
  if (!pulled) return { there, back: [] };
  const back = byGateway(ground, last, asked ?? from);
  return 'obstacle' in back ? { ...back, back: true } : { there, back };
}

type NoWay = Extract<Obstacle, { obstacle: 'no-gateway' | 'no-route' }>;

/** By way of the gateway of the sender's network, and of further routers where that one is not in the other's. */
function byGateway(ground: Ground, from: Interface, to: Interface): Leg[] | NoWay {
  const name = ground.site.vlans[from.network]?.gateway;
  const gateway = name === undefined ? undefined : ground.site.deviceByName.get(name);
  const names = { from: ground.networkName(from.network), to: ground.networkName(to.network) };
  if (gateway === undefined) return { obstacle: 'no-gateway', network: names.from, to: names.to };
  const first = gateway.bridging ? undefined : ground.interfaces.in(gateway, from.network);
  const legs = first === undefined ? undefined : throughRouters(ground, first, to);
  if (first === undefined || legs === undefined) return { obstacle: 'no-route', gateway: gateway.name, ...names };
  return [{ from, to: first }, ...legs];
}

function pickAddressed(interfaces: readonly Interface[]): Interface | undefined {
  return interfaces.find(({ address }) => address !== undefined) ?? interfaces[0];
}

/** The fewest routers from one interface of a router to a host's interface. */
function throughRouters(ground: Ground, first: Interface, last: Interface): Leg[] | undefined {
  const seen = new Set<Device>([first.device]);
  const queue: { router: Device; legs: Leg[] }[] = [{ router: first.device, legs: [] }];
  for (let at = 0; at < queue.length; at++) {
    const entry = queue[at];
    if (entry === undefined) continue;
    for (const out of ground.interfaces.of(entry.router)) {
      if (out.network === last.network) return [...entry.legs, { from: out, to: last }];
      for (const router of ground.routers) {
        if (seen.has(router)) continue;
        const into = ground.interfaces.in(router, out.network);
        if (into === undefined) continue;
        seen.add(router);
        queue.push({ router, legs: [...entry.legs, { from: out, to: into }] });
      }
    }
  }
  return undefined;
}
