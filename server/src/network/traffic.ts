/**
 * Other traffic than streams: between two hosts, at a declared rate in each direction, along the same paths.
 *
 * The rates are those of the data. It counts as TCP in full segments that the other end acknowledges, like a long
 * transfer.
 */

import { perObject } from '../memo.ts';
import type { Device, Port, Stream, Traffic } from '../site/model.ts';
import { readStream } from '../site/read.ts';
import { ACK_EVERY, MAXIMUM_SEGMENT, TCP_HEADER, TIMESTAMP_OPTION } from '../standards/tcp.ts';
import { IPV4_HEADER } from '../standards/internet.ts';
import type { Copy, Obstacle } from './delivery.ts';
import { type Link, domainsSentBy } from './link.ts';
import { type CrossingRates, type PacketRun, wireRates } from './rates.ts';
import type { RoutingContext } from './trace.ts';
import { routeUnicast } from './unicast.ts';
import type { Wiring } from './wiring.ts';

/** Whether traffic reaches its other end and back. */
export interface TrafficRoute {
  readonly traffic: Traffic;
  /** `undefined` where the end is not a device of the site. */
  readonly from: Device | undefined;
  readonly to: Device | undefined;
  readonly obstacle: Obstacle | undefined;
}

/** The traffic that crosses a direction of a link: on its way there, its way back, or both. */
export interface TrafficCopies {
  readonly traffic: Traffic;
  readonly rates: CrossingRates;
  readonly untagged: number;
  readonly tagged: number;
  readonly repliesUntagged: number;
  readonly repliesTagged: number;
}

export interface TrafficRoutes {
  /** In the order of the site. */
  readonly routes: readonly TrafficRoute[];
  readonly crossing: (link: Link, out: Port) => readonly TrafficCopies[];
}

export function trafficRoutes(
  wiring: Wiring,
  deviceByName: ReadonlyMap<string, Device>,
  all: readonly Traffic[],
): TrafficRoutes {
  const context: RoutingContext = { deviceByName, ...wiring };
  const routes: TrafficRoute[] = [];
  const byPort = new Map<Port, Counting[]>();
  for (const traffic of all) {
    const from = traffic.from === undefined ? undefined : deviceByName.get(traffic.from);
    const to = traffic.to === undefined ? undefined : deviceByName.get(traffic.to);
    if (from === undefined || to === undefined) {
      routes.push({ traffic, from, to, obstacle: undefined });
      continue;
    }
    const { obstacle, copies } = routed(context, traffic, from, to);
    routes.push({ traffic, from, to, obstacle });
    for (const { link, out, domain, reply } of copies) {
      const count = countOf(byPort, out, traffic);
      const isTagged = domainsSentBy(link, out).tagged.includes(domain);
      if (reply) count[isTagged ? 'repliesTagged' : 'repliesUntagged']++;
      else count[isTagged ? 'tagged' : 'untagged']++;
    }
  }
  return { routes, crossing: (_, out) => byPort.get(out) ?? NONE };
}

/** The route of traffic that either end may have asked for. */
function routed(
  context: RoutingContext,
  traffic: Traffic,
  from: Device,
  to: Device,
): { readonly obstacle: Obstacle | undefined; readonly copies: readonly Copy[] } {
  const { delivery, copies } = routeUnicast(context, trafficAsStream(traffic, to), from);
  const obstacle = delivery.unreached[0]?.why;
  if (obstacle?.obstacle !== 'not-allowed') return { obstacle, copies };
  const turned = routeUnicast(context, trafficAsStream({ ...traffic, from: to.name }, from), to);
  if (turned.delivery.unreached.length > 0) return { obstacle, copies };
  return { obstacle: undefined, copies: turned.copies.map((copy) => ({ ...copy, reply: !copy.reply })) };
}

const NONE: readonly TrafficCopies[] = [];

type Counting = { -readonly [K in keyof TrafficCopies]: TrafficCopies[K] };

function countOf(byPort: Map<Port, Counting[]>, out: Port, traffic: Traffic): Counting {
  let list = byPort.get(out);
  if (list === undefined) byPort.set(out, (list = []));
  const last = list.at(-1);
  if (last?.traffic === traffic) return last;
  const rates = trafficRates(traffic);
  const count = { traffic, rates, untagged: 0, tagged: 0, repliesUntagged: 0, repliesTagged: 0 };
  list.push(count);
  return count;
}

/** Traffic as a stream that travels both ways: one end pulls it from the other. */
export function trafficAsStream({ item, from = '' }: Traffic, to: Device): Stream {
  return readStream({ ...item, data: { source: from, transport: 'rtsp', receivers: [to.name] } });
}

const HEADERS = [
  { name: 'IPv4', bytes: IPV4_HEADER },
  { name: 'TCP with timestamps', bytes: TCP_HEADER + TIMESTAMP_OPTION },
];

/** The rates of its way there, and as `reply` of its way back. */
export const trafficRates = perObject(({ rate = 0, back = 0 }: Traffic): CrossingRates => {
  const way = (data: number, acknowledged: number, tagged: boolean): CrossingRates['untagged'] =>
    wireRates(
      [segments('data', data), segments('acknowledgements', acknowledged)],
      { nominal: data, peak: data },
      tagged,
    );
  return {
    untagged: way(rate, back, false),
    tagged: way(rate, back, true),
    reply: { untagged: way(back, rate, false), tagged: way(back, rate, true) },
  };
});

/** Full segments of data at a rate in bit/s, or the acknowledgements of these. */
function segments(what: 'data' | 'acknowledgements', rate: number): PacketRun {
  const isData = what === 'data';
  const perSecond = rate / (8 * MAXIMUM_SEGMENT) / (isData ? 1 : ACK_EVERY);
  const media = isData ? MAXIMUM_SEGMENT : 0;
  return {
    what,
    media: { nominal: media, peak: media },
    headers: HEADERS,
    perSecond: { nominal: perSecond, peak: perSecond },
  };
}
