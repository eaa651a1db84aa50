/** What must not fail: each element, by what is lost with it. */

import { perObject } from '../memo.ts';
import { oppositePort } from '../network/link.ts';
import { router } from '../network/routes.ts';
import { wiringOf } from '../network/wiring.ts';
import type { Device } from '../site/model.ts';
import { availableIn } from './available.ts';
import { downWith } from './down.ts';
import { type Element, elementsOf, type Works } from './element.ts';
import { type Losses, availableNow, lossesBetween } from './failure.ts';
import { footageAfter } from './footage.ts';
import { forgetsIn } from './queriers.ts';

export interface Ranked extends Losses {
  readonly element: Element;
  /** Whether footage that is kept is lost with it. */
  readonly losesFootage: boolean;
}

/** Most recordings first, then most cameras, then most pictures; without what loses nothing. */
export const rankingOf = perObject((plan: Works): readonly Ranked[] => finished(rankingSteps(plan)));

/** Takes all the steps at once. */
export function finished<T>(steps: Generator<undefined, T, undefined>): T {
  for (;;) {
    const { done, value } = steps.next();
    if (done === true) return value;
  }
}

/** The ranking, with a stop after each element, where others may be answered. */
export function* rankingSteps(plan: Works): Generator<undefined, readonly Ranked[], undefined> {
  const all: Ranked[] = [];
  for (const element of elementsOf(plan)) {
    all.push(rankedOf(plan, element));
    yield;
  }
  return all
    .filter(
      ({ pictures, recordings, cameras, losesFootage }) =>
        pictures.length + recordings.length + cameras.length > 0 || losesFootage,
    )
    .sort(
      (a, b) =>
        b.recordings.length - a.recordings.length ||
        b.cameras.length - a.cameras.length ||
        b.pictures.length - a.pictures.length,
    );
}

/** Elements of one kind that lose as much as each other. */
export type Equals = readonly [Ranked, ...Ranked[]];

/** In the order of the ranking. */
export function equalsIn(ranking: readonly Ranked[]): readonly Equals[] {
  const groups = new Map<string, [Ranked, ...Ranked[]]>();
  for (const ranked of ranking) {
    const { element, recordings, cameras, pictures, losesFootage } = ranked;
    const key = [element.kind, recordings.length, cameras.length, pictures.length, losesFootage].join();
    const known = groups.get(key);
    if (known === undefined) groups.set(key, [ranked]);
    else known.push(ranked);
  }
  return [...groups.values()];
}

/** The losses alone, without loads. */
export function rankedOf(plan: Works, element: Element): Ranked {
  const { site, network } = plan;
  const failed = downWith(plan, element);
  const footage = footageAfter(plan, element, failed);
  const lost = footage.flatMap(({ volume, fate }) => (fate === 'lost' ? [volume] : []));
  const ends = endsAlone(plan, element, failed.devices);
  // Without an end host all else goes on as it is.
  const dark = { devices: new Set([...failed.devices, ...(ends ?? [])]), volumes: new Set(lost) };
  if (ends !== undefined)
    return {
      element,
      losesFootage: lost.length > 0,
      ...lossesBetween(plan, availableIn(site, network.delivery, dark)),
    };
  const { vlans, devices, deviceByName, cables, streams } = site;
  const wiring = wiringOf({ vlans, devices, deviceByName, cables, failed });
  const { delivery } = router(wiring, deviceByName)(streams);
  const forgets = forgetsIn(site, network, { ...wiring, delivery });
  return {
    element,
    losesFootage: lost.length > 0,
    ...lossesBetween(plan, availableIn(site, delivery, { ...dark, forgets })),
  };
}

/** The end hosts that are cut off, where nothing else is; `undefined` where others may be. */
function endsAlone(
  { site, network }: Works,
  { cables, volume }: Element,
  dead: ReadonlySet<Device>,
): readonly Device[] | undefined {
  const { linkAt } = network.topology;
  const leads = new Set(site.vlans.flatMap(({ gateway, querier }) => [gateway, querier]));
  const isEnd = (device: Device): boolean =>
    !device.bridging && !device.routing && !leads.has(device.name) && device.kind !== 'internet';
  if (![...dead].every(isEnd)) return undefined;
  const ends: Device[] = [];
  for (const { a, b, cable } of network.topology.links.flatMap(({ members }) => members)) {
    if (!cables.includes(cable)) continue;
    const link = linkAt(a);
    const end = [a, b].find(({ forwards }) => !forwards);
    if (link === undefined || end === undefined || link.members.length > 1) return undefined;
    const isOnly = end.device.ports.filter((port) => linkAt(port) !== undefined).length === 1;
    // What a server records of its own goes on without its cable.
    const isPlain = end.device.kind === 'camera' || end.device.kind === 'display';
    if (!isPlain || !isEnd(end.device) || !isOnly || !oppositePort(link, end).forwards) return undefined;
    ends.push(end.device);
  }
  return volume === undefined || ends.length === 0 ? ends : undefined;
}

/** What is recorded and shown while nothing has failed, to say how much of it is lost. */
export function allOf(plan: Works): { recordings: number; pictures: number } {
  const { recordings, reaches } = availableNow(plan);
  const pictures = plan.site.streams.reduce(
    (sum, stream) =>
      sum + [...reaches(stream)].filter((name) => plan.site.deviceByName.get(name)?.kind !== 'server').length,
    0,
  );
  return { recordings: recordings.size, pictures };
}
