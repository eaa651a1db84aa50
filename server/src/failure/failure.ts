/** The losses when an element fails, what takes over, whether that fits, and how long it takes. */

import { perObject } from '../memo.ts';
import type { Failed } from '../network/failed.ts';
import { type Network, networkOf } from '../network/network.ts';
import type { Device, Recording, Stream, Volume } from '../site/model.ts';
import { groupMembershipInterval } from '../standards/igmp.ts';
import { type Available, availableIn } from './available.ts';
import { downWith } from './down.ts';
import type { Element, Works } from './element.ts';
import { type Footage, footageAfter } from './footage.ts';
import { type ClockLoss, type GatewayLoss, clocksLost, gatewaysLost } from './gateways.ts';
import { forgetsIn, isWithoutQueries, withoutQuerier } from './queriers.ts';
import { type Recovery, recoveryOf } from './recovery.ts';
import { type Takeover, takeoversIn } from './takeover.ts';
import { withdrawnIn } from './withdrawn.ts';

/** A picture on a screen. */
export interface Picture {
  readonly stream: Stream;
  readonly receiver: string;
  /** Seconds after which it is gone; 0 at once. */
  readonly after: number;
}

export interface Losses {
  readonly pictures: readonly Picture[];
  readonly recordings: readonly Recording[];
  /** The cameras that were shown or recorded, and no longer are. */
  readonly cameras: readonly Device[];
}

export interface Failure extends Losses {
  readonly element: Element;
  /** The network after the failure. */
  readonly network: Network;
  readonly available: Available;
  /** The devices that fail with it, as it feeds them. */
  readonly devices: readonly Device[];
  readonly footage: readonly Footage[];
  readonly gateways: readonly GatewayLoss[];
  readonly clocks: readonly ClockLoss[];
  /** Names of VLANs that have lost their querier. */
  readonly withoutQuerier: readonly string[];
  /** Links that carry more than before, the fullest first. */
  readonly takeovers: readonly Takeover[];
  /** How long the remaining streams are interrupted; `undefined` where none is. */
  readonly recovery: Recovery | undefined;
  /** What is lost if a host gives up the routes of a card without carrier; `undefined` where that is the same. */
  readonly otherwise: Pick<Losses, 'pictures' | 'recordings'> | undefined;
}

export function failureOf(plan: Works, element: Element): Failure {
  const { site, network: before } = plan;
  const failed = downWith(plan, element);
  const after = networkOf(site, failed);
  const footage = footageAfter(plan, element, failed);
  const volumes = new Set(footage.flatMap(({ volume, fate }) => (fate === 'lost' ? [volume] : [])));
  const forgets = forgetsIn(site, before, after);
  const available = availableIn(site, after.delivery, { devices: failed.devices, volumes, forgets });
  const losses = lossesBetween(plan, available, (stream, receiver) => {
    const screen = site.deviceByName.get(receiver);
    const isThere = available.isFed(stream) && screen !== undefined && !failed.devices.has(screen);
    return isThere && (forgets(stream, receiver) || isWithoutQueries(after, stream, receiver))
      ? groupMembershipInterval()
      : 0;
  });
  return {
    element,
    network: after,
    available,
    ...losses,
    devices: [...failed.devices].filter((device) => !element.devices.includes(device)),
    footage,
    gateways: gatewaysLost(plan, after, failed),
    clocks: clocksLost(plan, after, failed),
    withoutQuerier: withoutQuerier(before, after, failed),
    takeovers: takeoversIn(plan, after),
    recovery: recoveryOf(plan, after, failed, available),
    otherwise: otherwise(plan, failed, losses, volumes),
  };
}

/** The available pictures and recordings while nothing has failed. */
export const availableNow = perObject(({ site, network }: Works): Available =>
  availableIn(site, network.delivery, { devices: new Set(), volumes: new Set() }),
);

/** @param of the streams and recordings that may be lost, each camera with all of its streams */
export function lossesBetween(
  plan: Works,
  after: Available,
  secondsOf: (stream: Stream, receiver: string) => number = () => 0,
  of: Pick<Works['site'], 'streams' | 'recordings'> = plan.site,
): Losses {
  const { site } = plan;
  const before = availableNow(plan);
  const pictures: Picture[] = [];
  const cameras = new Map<string, 'lost' | 'kept'>();
  for (const stream of of.streams) {
    const now = after.reaches(stream);
    const then = before.reaches(stream);
    for (const receiver of then) {
      if (now.has(receiver)) continue;
      if (site.deviceByName.get(receiver)?.kind !== 'server')
        pictures.push({ stream, receiver, after: secondsOf(stream, receiver) });
    }
    if (stream.source === undefined || then.size === 0) continue;
    if (now.size > 0) cameras.set(stream.source, 'kept');
    else if (!cameras.has(stream.source)) cameras.set(stream.source, 'lost');
  }
  return {
    pictures,
    recordings: of.recordings.filter((one) => before.recordings.has(one) && !after.recordings.has(one)),
    cameras: [...cameras].flatMap(([name, fate]) => {
      const device = site.deviceByName.get(name);
      return fate === 'lost' && device?.kind === 'camera' ? [device] : [];
    }),
  };
}

/** The losses with the addresses of cut cards withdrawn, where these are smaller. */
function otherwise(
  plan: Works,
  failed: Failed,
  losses: Losses,
  volumes: ReadonlySet<Volume>,
): Pick<Losses, 'pictures' | 'recordings'> | undefined {
  if (losses.pictures.length + losses.recordings.length === 0) return undefined;
  const site = withdrawnIn(plan, failed);
  if (site === undefined) return undefined;
  const dead = new Set(site.devices.filter(({ item }) => [...failed.devices].some((device) => device.item === item)));
  const network = networkOf(site, { cables: new Set(), devices: dead });
  const better = availableIn(site, network.delivery, { devices: dead, volumes });
  const isGone = ({ stream: { name }, receiver }: Picture): boolean => {
    const stream = site.streamByName.get(name);
    return stream === undefined || !better.reaches(stream).has(receiver);
  };
  const found = {
    pictures: losses.pictures.filter(isGone),
    recordings: losses.recordings.filter((recording) => !better.recordings.has(recording)),
  };
  const fewer = found.pictures.length < losses.pictures.length || found.recordings.length < losses.recordings.length;
  return fewer ? found : undefined;
}
