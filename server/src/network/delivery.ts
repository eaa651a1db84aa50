/** The receivers that a stream reaches, and why it does not reach the others. */

import type { Device, HostRoute, Stream } from '../site/model.ts';
import type { Interface } from './interface.ts';
import type { Direction } from './link.ts';
import type { BroadcastDomain } from './vlan-membership.ts';

export type Obstacle =
  /** No cable at any port of the device, or none that carries a network. */
  | { readonly obstacle: 'source-not-cabled'; readonly device: string }
  | { readonly obstacle: 'receiver-not-cabled' }
  /** The device forwards frames or only holds plugs. */
  | { readonly obstacle: 'not-a-host' }
  /** Nothing joins the two in their network. */
  | { readonly obstacle: 'apart'; readonly network: string }
  /** The receiver has no interface in the network that the group is sent into, and no router forwards it. */
  | {
      readonly obstacle: 'other-network';
      readonly from: string;
      readonly to: string;
      readonly routers: readonly string[];
    }
  /** The source sends it out of `port` into `from`, and has a port in the receiver's network too: `own` in `to`. */
  | {
      readonly obstacle: 'leaves-elsewhere';
      readonly port: string;
      readonly from: string;
      readonly own: string;
      readonly to: string;
    }
  /** By its routes, the receiver joins at an interface in another network. */
  | { readonly obstacle: 'joins-elsewhere'; readonly port: string; readonly network: string; readonly from: string }
  | { readonly obstacle: 'ttl'; readonly ttl: number; readonly needed: number }
  /** No querier, so that the receiver's report gets no further than its own switch, and the group is dropped. */
  | { readonly obstacle: 'report-stays'; readonly network: string; readonly bridge: string }
  /** No querier, and `bridge` knows members of the group only at other ports. */
  | { readonly obstacle: 'known-nearer'; readonly network: string; readonly bridge: string; readonly at: string }
  /** The report of `member` goes to `querier`, so `router`, which would forward the group, hears of no member. */
  | {
      readonly obstacle: 'report-astray';
      readonly network: string;
      readonly router: string;
      readonly querier: string;
      readonly member: string;
    }
  /** The VLAN `from` does not let its hosts ask those of `to`. */
  | {
      readonly obstacle: 'not-allowed';
      readonly from: string;
      readonly to: string;
      readonly isInternet: boolean;
      readonly back?: true;
    }
  | { readonly obstacle: 'link-local'; readonly from: string; readonly to: string }
  /** With `back`, the receiver's own network has no gateway, so it cannot ask the source. */
  | { readonly obstacle: 'no-gateway'; readonly network: string; readonly to: string; readonly back?: true }
  | {
      readonly obstacle: 'no-route';
      readonly gateway: string;
      readonly from: string;
      readonly to: string;
      readonly back?: true;
    }
  /** `device` sends it by a port without a cable, because of `route` or of an address of the port. */
  | {
      readonly obstacle: 'into-nothing';
      readonly device: string;
      readonly port: string;
      readonly route: HostRoute | undefined;
      readonly back?: true;
    }
  /** `device` looks for it at `port` in `network`, but it is in `to`. */
  | {
      readonly obstacle: 'not-on-link';
      readonly device: string;
      readonly port: string;
      readonly network: string;
      readonly to: string;
      readonly route: HostRoute | undefined;
      readonly back?: true;
    }
  /** `device` sends it to a gateway address that nobody has there. */
  | {
      readonly obstacle: 'no-such-gateway';
      readonly device: string;
      readonly via: number;
      readonly route: HostRoute;
      readonly back?: true;
    }
  /** `device` sends it to a gateway that forwards nothing, because of `route` or as the gateway of `network`. */
  | {
      readonly obstacle: 'no-router';
      readonly device: string;
      readonly gateway: string;
      readonly network: string;
      readonly route: HostRoute | undefined;
      readonly back?: true;
    }
  /** Routers send it to each other in a circle. */
  | { readonly obstacle: 'circle'; readonly devices: readonly string[]; readonly back?: true }
  /** `device` has several cards and no route for the group: it can neither send to it nor join it. */
  | { readonly obstacle: 'no-group-route'; readonly device: string }
  /** The streams before it cross links so often that this one is not followed. */
  | { readonly obstacle: 'not-followed' };

/**
 * The most times that the streams of a site cross links, each copy in each direction; later streams are not followed.
 * A house has some thousands.
 */
export const MOST_COPIES = 500_000;

export const NOT_FOLLOWED: Obstacle = { obstacle: 'not-followed' };

export interface Unreached {
  readonly receiver: string;
  readonly why: Obstacle;
}

export interface Delivery {
  readonly stream: Stream;
  readonly source: Device | undefined;
  /** The interface by which a multicast stream leaves its source, and the route that decides it. */
  readonly leaves: Interface | undefined;
  readonly route: HostRoute | undefined;
  /** Names of receivers, in their order. A source that receives its own stream hears it without a network. */
  readonly reaches: readonly string[];
  readonly unreached: readonly Unreached[];
  /** Broadcast domains that the stream is sent into. */
  readonly domains: readonly BroadcastDomain[];
}

/** A copy of a stream in one direction of a link, as a frame of one broadcast domain. */
export interface Copy extends Direction {
  readonly domain: BroadcastDomain;
  /** Whether it travels back to the source: an acknowledgement. */
  readonly reply: boolean;
}

/** The delivery of a stream, and the copies that it takes. */
export interface Routed {
  readonly delivery: Delivery;
  readonly copies: readonly Copy[];
}

/** Whether an end has no cable that carries a network. */
export function isUncabled({ obstacle }: Obstacle): boolean {
  return obstacle === 'source-not-cabled' || obstacle === 'receiver-not-cabled';
}
