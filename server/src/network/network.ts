/** The network of a site, computed: its wiring, the receivers that each stream reaches, and the load on each link. */

import { lastResult } from '../memo.ts';
import type { Media, Port, Site, Stream } from '../site/model.ts';
import type { AddressUse } from './address-uses.ts';
import { type Causes, causesOf } from './causes.ts';
import { type SimultaneousCopies, simultaneousCopies } from './simultaneous-copies.ts';
import type { BridgeTree } from './bridge-tree.ts';
import type { Choices } from './choices.ts';
import type { Delivery } from './delivery.ts';
import type { Failed } from './failed.ts';
import type { Interfaces } from './interfaces.ts';
import { type Link, linkEnd } from './link.ts';
import { type DirectionLoad, loadsOf } from './loads.ts';
import type { BroadcastDomain } from './vlan-membership.ts';
import type { Memberships } from './multicast.ts';
import { type StreamRates, streamRates } from './rates.ts';
import { type Routes, type StreamCopies, router } from './routes.ts';
import { type TrafficCopies, type TrafficRoute, trafficRoutes } from './traffic.ts';
import { type Topology, type Wiring, wiringOf } from './wiring.ts';

export interface Network {
  readonly topology: Topology;
  readonly interfaces: Interfaces;
  /** Every address that a device of the site has. */
  readonly addressUses: readonly AddressUse[];
  readonly routers: Wiring['routers'];
  readonly multicastRouters: Wiring['multicastRouters'];
  /** The bridges of a broadcast domain. */
  readonly tree: (domain: BroadcastDomain) => BridgeTree;
  readonly memberships: Memberships;
  /** In the order of the streams. */
  readonly deliveries: readonly Delivery[];
  readonly delivery: (stream: Stream) => Delivery;
  /**
   * The streams that cross a link in the direction in which frames leave by `out`, in their order; where screens show
   * some of their streams at a time, the largest that they can show together.
   */
  readonly copies: (link: Link, out: Port) => readonly StreamCopies[];
  /** The streams that cross it only while a screen shows them instead of others. */
  readonly waiting: (link: Link, out: Port) => readonly StreamCopies[];
  /** Which screens show some of their streams at a time. */
  readonly choices: Choices;
  readonly rates: (stream: Stream) => StreamRates;
  /** Other traffic than streams, in the order of the site. */
  readonly traffic: readonly TrafficRoute[];
  /** The traffic that crosses a link in the direction in which frames leave by `out`, in that order. */
  readonly trafficCopies: (link: Link, out: Port) => readonly TrafficCopies[];
  /** The load of all streams and other traffic on a link, in the direction in which frames leave by `out`. */
  readonly load: (link: Link, out: Port) => DirectionLoad;
  /** Which faults of the wiring have which effects. */
  readonly causes: Causes;
}

export function networkOf(site: Site, failed?: Failed): Network {
  return networker(failed)(site);
}

/** As `networkOf`, for a site that is edited: a step is computed again only if its inputs changed. */
export function networker(failed?: Failed): (site: Site) => Network {
  const keepWiring = lastResult(
    (
      vlans: Site['vlans'],
      devices: Site['devices'],
      deviceByName: Site['deviceByName'],
      cables: Site['cables'],
    ): Wiring => wiringOf({ vlans, devices, deviceByName, cables, failed }),
  );
  const keepRouter = lastResult(router);
  const keepRates = lastResult((streams: readonly Stream[], media: (stream: Stream) => Media) => {
    const byStream = new Map(streams.map((stream) => [stream, streamRates(stream, media(stream))]));
    return (stream: Stream): StreamRates => {
      const ofStream = byStream.get(stream);
      if (ofStream === undefined) throw new Error(`${stream.name} is not a stream of this site`);
      return ofStream;
    };
  });
  const keepAtOnce = lastResult((links: readonly Link[], routes: Routes, rates: Network['rates']) =>
    byLead(simultaneousCopies(links, routes, routes.choices.decoders, rates)),
  );
  const keepTraffic = lastResult((wiring: Wiring, deviceByName: Site['deviceByName'], traffic: Site['traffic']) => {
    const { routes, crossing } = trafficRoutes(wiring, deviceByName, traffic);
    return { routes, crossing: atLead(crossing) };
  });
  const keepLoads = lastResult((...of: Parameters<typeof loadsOf>) => atLead(loadsOf(...of)));
  const keepCauses = lastResult((...of: Parameters<typeof causesOf>) => causesOf(...of));
  return lastResult((site) => {
    const wiring = keepWiring(site.vlans, site.devices, site.deviceByName, site.cables);
    const routes = keepRouter(wiring, site.deviceByName)(site.streams);
    const rates = keepRates(site.streams, site.media);
    const { copies, waiting } = keepAtOnce(wiring.topology.links, routes, rates);
    const other = keepTraffic(wiring, site.deviceByName, site.traffic);
    const load = keepLoads(wiring.topology.links, copies, rates, other.crossing);
    const { memberships, choices, deliveries, delivery } = routes;
    const { routes: traffic, crossing: trafficCopies } = other;
    const causes = keepCauses(wiring, deliveries, traffic);
    const whom = { memberships, choices, deliveries, delivery };
    return { copies, waiting, rates, traffic, trafficCopies, load, causes, ...wiring, ...whom };
  });
}

function byLead({ copies, waiting }: SimultaneousCopies): SimultaneousCopies {
  return { copies: atLead(copies), waiting: atLead(waiting) };
}

/** Looks up any port of an aggregated link under the port that stands for its end. */
function atLead<T>(of: (link: Link, out: Port) => T): (link: Link, out: Port) => T {
  return (link, out) => of(link, linkEnd(link, out));
}
